import { basename, dirname, resolve } from "node:path";
import type { PacesOf } from "../../core/pace/known-paces.ts";
import type { Meal } from "../../core/recipe/model.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { MealBook } from "../kitchen/meal-book.ts";
import { inProgram } from "./in-program.ts";

/** A meal that a command was given, ready to cook. */
export interface FoundMeal {
  readonly meal: CookingMeal;
  /** Minutes from midnight as in its file; null: as soon as possible. */
  readonly serveAt: Meal["serveAt"];
  /** With nobody to help, with one helper, with two. */
  readonly takesMinutes: readonly number[];
}

/**
 * When the cook comes into the kitchen: a tenth more than the meal takes before serving, on the five minutes.
 * @param serveAt in minutes, like what is returned
 * @param helping how many help
 */
export const entersAt = ({ takesMinutes }: FoundMeal, serveAt: number, helping = 0): number =>
  Math.floor((serveAt - (takesMinutes[helping] ?? 0) * 1.1) / 5) * 5;

/** Where the word points: an id in the program's own recipes, or a file in the meals folder of a cook's own. */
function placeOf(word: string): Result<{ readonly folder: string; readonly id: string }, string> {
  const stem = /^(.*)\.ya?ml$/i.exec(basename(word))?.[1];
  if (stem === undefined) return ok({ folder: inProgram("recipes"), id: word });
  const shelf = dirname(resolve(word));
  if (basename(shelf) === "meals") return ok({ folder: dirname(shelf), id: stem });
  return err(
    `${word} does not lie in a folder called meals, beside the dishes. Move it there, or give a meal's name.`,
  );
}

/**
 * The meal that a word names: its id, or the path of its file.
 * @param word "welcome-supper", "recipes/meals/welcome-supper.yaml"
 * @param pacesOf how the cook takes a meal's work; as the recipes say unless given
 * Error: one sentence with what there is instead, or with the file's first mistake.
 */
export async function findMeal(word: string, pacesOf?: PacesOf): Promise<Result<FoundMeal, string>> {
  const place = placeOf(word);
  if (!place.ok) return place;
  const { folder, id } = place.value;
  const book = await MealBook.open(folder);
  const { meals, mistakes } = book.listing(pacesOf);
  const meal = book.meal(id, {});
  const card = meals.find((one) => one.id === id);
  if (meal.ok && card !== undefined)
    return ok({
      meal: meal.value,
      serveAt: card.serveAt,
      takesMinutes: [card.takesMinutes, ...card.takesWithHelp],
    });
  const mistake = mistakes.find(({ file }) => file.startsWith(`meals/${id}.`));
  if (mistake !== undefined) return err(`${mistake.file}, line ${mistake.line}: ${mistake.sentence}`);
  return meal.ok ? err(`${id} cannot be cooked.`) : meal;
}

/**
 * The meal that a word names, with its dishes scaled and nothing planned: a plan takes a while, and not all ask for one.
 * @param word as for `findMeal`
 * Error: as there.
 */
export async function findUnplannedMeal(word: string): Promise<Result<CookingMeal, string>> {
  const place = placeOf(word);
  if (!place.ok) return place;
  const meal = (await MealBook.open(place.value.folder)).meal(place.value.id, {});
  if (meal.ok) return meal;
  const found = await findMeal(word);
  return found.ok ? ok(found.value.meal) : found;
}
