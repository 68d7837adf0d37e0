import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import type { Diet, DietId } from "./diet.ts";
import type { EatenMeal } from "./eaten.ts";
import type { Larder } from "./groups.ts";

/** Which diets hold, or one sentence that says why nobody can tell. */
export type Holding = Result<readonly DietId[], string>;

/** All that is known at a moment of foods, of what the cook may eat, and of what was eaten before. */
export interface FoodBook {
  readonly larder: Larder;
  /** Every diet that holds for any meal. */
  readonly diets: readonly Diet[];
  /** By a meal's id, the diets that hold for it. */
  readonly holding: ReadonlyMap<string, Holding>;
  /** Those that hold whatever is cooked. */
  readonly always: Holding;
  /** The meals of the last days without the one that is being cooked, or why nobody can tell. */
  readonly eaten: Result<readonly EatenMeal[], string>;
}

/**
 * The diets that hold for a meal.
 * @param meal its id; null: no meal is on
 * Error: one sentence that says why nobody can tell.
 */
export function dietsIn(book: FoodBook, meal: string | null): Result<readonly Diet[], string> {
  const gone = err("The file of this meal is gone, so nobody can tell which diets hold for it.");
  const holding = meal === null ? book.always : (book.holding.get(meal) ?? gone);
  if (!holding.ok) return holding;
  return ok(book.diets.filter(({ id }) => holding.value.includes(id)));
}
