import { eachNutrient } from "../food/nutrients.ts";
import { addTotals, mealValues, type MealValues, type Values } from "../food/values.ts";
import { ok, type Result } from "../units/result.ts";
import { within } from "./eaten.ts";
import type { FoodBook } from "./food-book.ts";

/** What a day holds: a serving of every dish that the log says was eaten, and one of what is cooked now. */
export interface DayValues {
  /** null: by the log nothing was eaten on this day before. */
  readonly before: Values | null;
  readonly together: Values;
  /** How many ingredients belong to the sum of both. */
  readonly counted: number;
}

/** The day with a meal. @param now what is cooked now holds. Error: one sentence that says why nobody can tell. */
export function dayValues(now: MealValues, book: FoodBook): Result<DayValues, string> {
  if (!book.eaten.ok) return book.eaten;
  const dishes = within(book.eaten.value, "day").flatMap((meal) => meal.dishes);
  if (dishes.length === 0) return ok({ before: null, together: now.aServing, counted: now.counted });
  const earlier = mealValues({ ...now.meal, dishes }, book.larder.foods);
  return ok({
    before: earlier.aServing,
    together: eachNutrient((nutrient) => addTotals(earlier.aServing[nutrient], now.aServing[nutrient])),
    counted: earlier.counted + now.counted,
  });
}
