import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findFood } from "../../../core/food/find-food.ts";
import type { Food } from "../../../core/food/food.ts";
import { boughtWeight, edibleWeight, weighedAs } from "../../../core/food/refuse.ts";
import { weigh } from "../../../core/food/weigh.ts";
import { parseAmount } from "../../../core/units/amount.ts";
import { compare, ratio, toNumber } from "../../../core/units/rational.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table, foods } = await shippedFoods();

function foodOf(item: string): Food {
  const food = findFood(table, item, null);
  if (!food.ok) throw new Error(food.error);
  return food.value;
}

function grams(written: string, item: string, preparation: string | null): readonly number[] {
  const [amount, food] = [parseAmount(written), findFood(table, item, preparation)];
  const weight = amount.ok && food.ok ? weigh(food.value, amount.value, item, preparation) : null;
  if (weight?.ok !== true) throw new Error(`${item} cannot be weighed`);
  return [toNumber(weight.value.low), toNumber(weight.value.high)];
}

describe("bought and eaten weight", () => {
  /**
   * Refuse as USDA SR28 has it: butternut squash 16 (number 11485, seeds, rind and trimmings), potatoes 25 (11352, parings
   * and trimmings), carrots 11 (11124), plums 6 (09279, pits). Its documentation reckons the edible portion of what is
   * bought as weight x (100 - refuse) / 100 (from memory).
   */
  it.each<[string, string, string | null, number, number]>([
    ["2 lb", "butternut squash", "peeled", 2 * 453.59237 * 0.84, 2 * 453.59237 * 0.84],
    ["2 lb", "peeled butternut squash", "cubed", 2 * 453.59237, 2 * 453.59237],
    ["500 g", "potatoes", null, 375, 500],
    ["500 g", "potatoes", "unpeeled", 375, 500],
    ["500 g", "potatoes", "peeled and diced", 375, 375],
    ["500 g", "potatoes", "diced, peeled weight", 500, 500],
    ["400-500 g", "carrots", "trimmed", 356, 445],
    ["400-500 g", "carrots", "sliced", 356, 500],
    ["1 kg", "plums", "ripe, stoned", 940, 940],
    // No refuse, or a measure that is without it already.
    ["200 g", "red lentils", "rinsed", 200, 200],
    ["1 cup", "carrots", "peeled and sliced", 122, 122],
  ])("[F40] %s of %s, %s: %d to %d g to eat", (amount, item, preparation, low, high) => {
    const peeled = item.startsWith("peeled ") ? item.slice(7) : item;
    const food = foodOf(peeled);
    const read = parseAmount(amount);
    const weight = read.ok ? weigh(food, read.value, item, preparation) : null;
    if (weight?.ok !== true) throw new Error("no weight");
    expect(toNumber(weight.value.low)).toBeCloseTo(low, 6);
    expect(toNumber(weight.value.high)).toBeCloseTo(high, 6);
  });

  it.each([
    ["squash", "peeled", "bought"],
    ["peeled squash", null, "eaten"],
    ["prawns", "shelled weight", "eaten"],
    ["plums", "weighed before stoning", "bought"],
    ["potatoes", "unpeeled", "not said"],
    ["squash", "halved and seeded", "not said"],
    ["carrots", null, "not said"],
  ])("[F40] %s, %s: %s", (item, preparation, as) => {
    expect(weighedAs(item, preparation)).toBe(as);
  });

  it("[F40] which it was is told, with the share", () => {
    const weight = weigh(
      foodOf("carrots"),
      { kind: "measured", low: "400/1", high: "400/1", unit: "g" },
      "carrots",
      null,
    );
    expect(weight.ok && weight.value.note).toBe(
      "Weighed as bought or as eaten, which is not said, with 11 percent refuse: carrots.",
    );
    expect(grams("400 g", "carrots", "peeled")).toEqual([356, 356]);
  });

  it("[F41] edible = bought x (1 - refuse), there and back, for every food of the table", () => {
    expect(boughtWeight(foodOf("potatoes"), ratio(375))).toBe(ratio(500));
    expect(boughtWeight({ ...foodOf("potatoes"), refuse: null }, ratio(375))).toBeNull();
    fc.assert(
      fc.property(fc.constantFrom(...foods), fc.integer({ min: 1, max: 100_000 }), (food, edible) => {
        const bought = boughtWeight(food, ratio(edible));
        expect(bought === null).toBe(food.refuse === null);
        if (bought === null) return;
        expect(edibleWeight(food, bought)).toBe(ratio(edible));
        expect(compare(bought, ratio(edible))).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
