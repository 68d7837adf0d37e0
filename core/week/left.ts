import type { FoodTable } from "../food/food.ts";
import { stepsOf } from "../keeping/hazards.ts";
import { keepingOf } from "../keeping/keeping.ts";
import { sources } from "../keeping/sources-table.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";

/** What is left of a dish, in the fridge. */
export interface Left {
  readonly meal: CookingMeal;
  readonly dish: Dish;
  /** The day that it was cooked on, counted from 0. */
  readonly day: number;
  readonly servings: number;
  /** How many days it keeps after that day. */
  readonly keeps: number;
  /** Where that figure is from. */
  readonly source: string;
}

/** What a meal makes beyond what is eaten of it. */
export function leftOf(meal: CookingMeal, day: number, eaters: number, foods: FoodTable): readonly Left[] {
  return meal.dishes.flatMap((dish): readonly Left[] => {
    const servings = dish.yield.servings - eaters;
    if (servings <= 0) return [];
    const { fridgeDays, source } = keepingOf(dish.ingredients, stepsOf(dish), foods);
    return [{ meal, dish, day, servings, keeps: fridgeDays, source: sources[source].name }];
  });
}

/** What came of taking servings of a dish out of the fridge. */
export interface Taking {
  readonly left: readonly Left[];
  /** How many servings there were of it that are still good, at most those that were wanted. */
  readonly got: number;
  /** What was there of it and is too old. */
  readonly old: readonly Left[];
  /** The dish, where any of it was there. */
  readonly from: Left | null;
}

/** Takes the oldest that is still good first. */
export function take(all: readonly Left[], dish: string, wanted: number, day: number): Taking {
  const isGood = (one: Left): boolean => day - one.day <= one.keeps;
  const of = all.filter((one) => one.dish.id === dish && one.servings > 0);
  let missing = wanted;
  const left = all.map((one) => {
    if (!of.includes(one) || !isGood(one)) return one;
    const taken = Math.min(missing, one.servings);
    missing -= taken;
    return { ...one, servings: one.servings - taken };
  });
  return {
    left,
    got: wanted - missing,
    old: of.filter((one) => !isGood(one)),
    from: of.find(isGood) ?? of[0] ?? null,
  };
}
