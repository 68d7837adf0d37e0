import { describe, expect, it } from "vitest";
import { dayValues } from "../../../core/diet/day-values.ts";
import type { EatenMeal } from "../../../core/diet/eaten.ts";
import type { FoodBook } from "../../../core/diet/food-book.ts";
import { heldLimits } from "../../../core/diet/held-limits.ts";
import { mealValues } from "../../../core/food/values.ts";
import { toNumber } from "../../../core/units/rational.ts";
import { err, ok, type Result } from "../../../core/units/result.ts";
import { dishOf } from "../recipe/bean-pot.ts";
import { CHECK_SOUP } from "../food/check-soup.ts";
import { larder, limitsOf, mealOf } from "./diet-kit.ts";

/** A serving holds 57.81 mg sodium: worked outside this project from USDA SR28. */
const soup = dishOf(CHECK_SOUP);
const meal = mealOf(soup);

const bookWith = (eaten: Result<readonly EatenMeal[], string>): FoodBook => ({
  larder,
  diets: [],
  holding: new Map(),
  always: ok([]),
  eaten,
});

const limits = ["at most 57.9 mg sodium in a serving", "at most 57.7 mg sodium in the meal"];
const daily = ["at most 100 mg sodium in a day", "at least 500 g protein in a day"];

describe("limits beside the values", () => {
  const states = (eaten: Result<readonly EatenMeal[], string>, ...rules: readonly string[]) =>
    heldLimits({ meal, diets: [limitsOf(...rules)], book: bookWith(eaten) }).map((one) => [
      one.nutrient,
      one.dish,
      one.state,
    ]);

  it("[F60] each limit is kept, broken, not to be told, or open for the day, with the dish that it is about", () => {
    expect(states(ok([]), ...limits, ...daily)).toEqual([
      ["sodium", "Check Soup", "kept"],
      ["sodium", null, "broken"],
      ["sodium", null, "kept"],
      ["protein", null, "open"],
    ]);
    expect(states(ok([{ daysAgo: 0, dishes: [soup] }]), ...daily)[0]).toEqual(["sodium", null, "broken"]);
  });

  it("[F60] a day of which the log cannot be read is no day that keeps to anything", () => {
    expect(states(err("The meal log cannot be read."), ...daily).map(([, , state]) => state)).toEqual([
      "cannot tell",
      "cannot tell",
    ]);
  });
});

describe("what the day holds", () => {
  const now = mealValues(meal, larder.foods);
  const sodium = (eaten: readonly EatenMeal[]) => {
    const day = dayValues(now, bookWith(ok(eaten)));
    if (!day.ok) throw new Error(day.error);
    const { before, together, counted } = day.value;
    return [before === null ? null : toNumber(before.sodium.low), toNumber(together.sodium.low), counted];
  };

  it("[F59] a serving of each dish of the same day's meals and one of this; yesterday is left aside", () => {
    const [before, together, counted] = sodium([{ daysAgo: 0, dishes: [soup] }]);
    expect(Math.abs((before ?? 0) - 57.81)).toBeLessThan(0.0051);
    expect(Math.abs((together ?? 0) - 2 * 57.81)).toBeLessThan(0.0102);
    expect(counted).toBe(18);
    const [none, alone] = sodium([{ daysAgo: 1, dishes: [soup] }]);
    expect(none).toBeNull();
    expect(Math.abs((alone ?? 0) - 57.81)).toBeLessThan(0.0051);
  });

  it("[F59] where the log cannot be read, nobody says what the day holds", () => {
    const error = "The meal log cannot be read.";
    expect(dayValues(now, bookWith(err(error)))).toEqual(err(error));
  });
});
