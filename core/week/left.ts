import type { Diet } from "../diet/diet.ts";
import type { FoodTable } from "../food/food.ts";
import { stepsOf } from "../keeping/hazards.ts";
import { keepingOf } from "../keeping/keeping.ts";
import { sources } from "../keeping/sources-table.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";

/** A dish of which something is left, with the diets that hold for its meal. */
export interface CookedDish {
  readonly meal: CookingMeal;
  readonly dish: Dish;
  readonly diets: readonly Diet[];
}

/** What is left of a dish. */
export interface Left extends CookedDish {
  readonly from:
    /** Cooked in the week: on this day, counted from 0, and it keeps for so many days after it. */
    | { readonly kind: "week"; readonly day: number; readonly keeps: number }
    /** It was there before the week began. */
    | { readonly kind: "fridge" | "freezer" };
  readonly servings: number;
  /** The last day on which it is good; below 0: it is past its day. */
  readonly lastDay: number;
  /** Where that is from. */
  readonly source: string;
}

/** What a meal makes beyond what is eaten of it. */
export function leftOf(
  meal: CookingMeal,
  diets: readonly Diet[],
  day: number,
  eaters: number,
  foods: FoodTable,
): readonly Left[] {
  return meal.dishes.flatMap((dish): readonly Left[] => {
    const servings = dish.yield.servings - eaters;
    if (servings <= 0) return [];
    const { fridgeDays, source } = keepingOf(dish.ingredients, stepsOf(dish), foods);
    const from = { kind: "week", day, keeps: fridgeDays } as const;
    return [{ meal, dish, diets, from, servings, lastDay: day + fridgeDays, source: sources[source].name }];
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

/** Takes what goes off first and is still good. */
export function take(all: readonly Left[], dish: string, wanted: number, day: number): Taking {
  const isGood = (one: Left): boolean => day <= one.lastDay;
  const of = all
    .filter((one) => one.dish.id === dish && one.servings > 0)
    .toSorted((a, b) => a.lastDay - b.lastDay);
  let missing = wanted;
  const taken = new Map<Left, number>();
  for (const one of of.filter(isGood)) {
    taken.set(one, Math.min(missing, one.servings));
    missing -= taken.get(one) ?? 0;
  }
  return {
    left: all.map((one) => ({ ...one, servings: one.servings - (taken.get(one) ?? 0) })),
    got: wanted - missing,
    old: of.filter((one) => !isGood(one)),
    from: of.find(isGood) ?? of[0] ?? null,
  };
}
