import { basename, dirname, resolve } from "node:path";
import type { FoodTable } from "../../core/food/food.ts";
import type { Dish } from "../../core/recipe/model.ts";
import { listed, nearest } from "../../core/recipe/nearest.ts";
import type { PantryContents } from "../../core/recipe/read-pantry.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { loadPantry } from "../pantry/load-pantry.ts";
import { inProgram } from "./in-program.ts";

/** A dish as it is written, and the servings that are wanted of it. */
export interface WantedDish {
  readonly dish: Dish;
  readonly servings: number;
}

/** What a word names: the dishes of a meal, or one dish. */
export interface FoundDishes {
  readonly name: string;
  readonly dishes: readonly WantedDish[];
  /** null where no table of foods can be read. */
  readonly foods: FoodTable | null;
}

/** Where the word points: an id in the program's own recipes, or a file in the dishes or meals folder of a cook's own. */
function placeOf(word: string): Result<{ readonly folder: string; readonly id: string }, string> {
  const stem = /^(.*)\.ya?ml$/i.exec(basename(word))?.[1];
  if (stem === undefined) return ok({ folder: inProgram("recipes"), id: word });
  const shelf = dirname(resolve(word));
  if (["dishes", "meals"].includes(basename(shelf))) return ok({ folder: dirname(shelf), id: stem });
  return err(`${word} does not lie in a folder called dishes or meals. Move it there, or give a name.`);
}

function dishesIn(pantry: PantryContents, id: string): FoundDishes | null {
  const { foods } = pantry;
  const meal = pantry.meals.find((one) => one.id === id);
  if (meal !== undefined) {
    const dishes = meal.dishes.flatMap(({ dish: key, servings }): readonly WantedDish[] => {
      const dish = pantry.dishes.get(key);
      return dish === undefined ? [] : [{ dish, servings }];
    });
    return { name: meal.name, dishes, foods };
  }
  const dish = [...pantry.dishes.values()].find((one) => one.id === id);
  return dish === undefined
    ? null
    : { name: dish.name, dishes: [{ dish, servings: dish.yield.servings }], foods };
}

/**
 * The dishes that a word names: the id of a meal or a dish, or the path of its file.
 * Error: one sentence with the first mistake of the file, or with what there is instead.
 */
export async function findDishes(word: string): Promise<Result<FoundDishes, string>> {
  const place = placeOf(word);
  if (!place.ok) return place;
  const { folder, id } = place.value;
  const pantry = await loadPantry(folder);
  const found = dishesIn(pantry, id);
  if (found !== null) return ok(found);
  const mistake = pantry.mistakes.find(
    ({ file }) => file.startsWith(`dishes/${id}.`) || file.startsWith(`meals/${id}.`),
  );
  if (mistake !== undefined) return err(`${mistake.file}, line ${mistake.line}: ${mistake.sentence}`);
  const names = [...pantry.dishes.keys(), ...pantry.meals.map((meal) => meal.id)];
  const meant = nearest(id, names);
  const advice = meant === null ? `There are: ${listed(names)}.` : `Did you mean ${meant}?`;
  return err(`There is no dish or meal called ${id}. ${advice}`);
}
