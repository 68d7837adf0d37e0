import { basename, dirname, resolve } from "node:path";
import type { Mistake } from "../../core/recipe/mistake.ts";
import type { CookingMeal, Meal } from "../../core/recipe/model.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { MealBook } from "../kitchen/meal-book.ts";
import { inProgram } from "./in-program.ts";

/** A meal that a command was given, ready to cook. */
export interface FoundMeal {
  readonly meal: CookingMeal;
  /** Minutes from midnight as in its file; null: as soon as possible. */
  readonly serveAt: Meal["serveAt"];
  /** The diets that its file names. */
  readonly diets: Meal["diets"];
  /** The folder of recipes that it comes from. */
  readonly folder: string;
}

/**
 * When the cook comes into the kitchen: a tenth more than the meal takes before serving, on the five minutes.
 * @param takesMinutes how long it takes
 * @param serveAt in minutes, like what is returned
 */
export const entersAt = (takesMinutes: number, serveAt: number): number =>
  Math.floor((serveAt - takesMinutes * 1.1) / 5) * 5;

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

/** What is wrong with a meal: in its own file, or in that of a dish on account of which it cannot be cooked. */
function firstMistake(id: string, mistakes: readonly Mistake[]): Mistake | undefined {
  const own = mistakes.find(({ file }) => file.startsWith(`meals/${id}.`));
  const dish = /^dishes\.(.+)$/.exec(own?.field ?? "")?.[1];
  return mistakes.find(({ file }) => dish !== undefined && file.startsWith(`dishes/${dish}.`)) ?? own;
}

/**
 * The meal that a word names: its id, or the path of its file. Nothing is planned for it.
 * @param word "welcome-supper", "recipes/meals/welcome-supper.yaml"
 * Error: one sentence with what there is instead, or with the file's first mistake.
 */
export async function findMeal(word: string): Promise<Result<FoundMeal, string>> {
  const place = placeOf(word);
  if (!place.ok) return place;
  const { folder, id } = place.value;
  const book = await MealBook.open(folder);
  const meal = book.meal(id, {});
  if (meal.ok) return ok({ meal: meal.value, serveAt: book.serveAt(id), diets: book.dietsOf(id), folder });
  const mistake = firstMistake(id, book.mistakes());
  return mistake === undefined ? meal : err(`${mistake.file}, line ${mistake.line}: ${mistake.sentence}`);
}
