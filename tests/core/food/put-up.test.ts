import { describe, expect, it } from "vitest";
import { foodsOf } from "../../../core/food/ingredient-food.ts";
import { readIngredientLine } from "../../../core/food/ingredient-line.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table } = await shippedFoods();

/** The name of the food that a line is, or why it is none. */
function foodIn(line: string): string {
  const read = readIngredientLine(line);
  if (!read.ok) return read.error;
  const { item, preparation, amount } = read.value;
  const found = foodsOf(table, { item: item ?? "", preparation, food: null, amount });
  return found.ok ? found.value.map(({ name }) => name).join(", ") : found.error;
}

describe("what was put up is no fresh food", () => {
  it.each([
    ["1 (14.5 oz) can tomatoes, drained", "canned tomato"],
    ["2 x 400 g tins tomatoes, no salt added", "canned tomato without salt"],
    ["2 tins chickpeas, drained", "drained canned chickpea"],
    ["1 jar capers", "capers"],
    ["1 jar honey", "honey"],
    ["1 can beer", "beer"],
    ["1 can coconut milk", "canned coconut milk"],
    ["3 tomatoes", "tomato"],
    ["1 can parsnips", 'No food in the table is called "canned parsnips".'],
    ["1 jar canned tomatoes", "canned tomato"],
  ])("[F61] %s: %s", (line, told) => {
    expect(foodIn(line)).toBe(told);
  });

  it.each([
    [
      "2 peaches, in heavy syrup",
      'The recipe says "in heavy syrup", and the table has no "peaches" like that.',
    ],
    [
      "1 cup green beans, from a can",
      'The recipe says "from a can", and the table has no "green beans" like that.',
    ],
    [
      "1 cup water, with a pinch of salt",
      'The recipe says "with a pinch of salt", and the table has no "water" like that.',
    ],
    [
      "1 lime, preserved in salt",
      'The recipe says "preserved", and the table has no preserved food called "lime".',
    ],
    ["1 potato, buttered", 'The recipe says "buttered", and the table has no buttered food called "potato".'],
    ["1 cup water, with no salt", "water"],
    ["1 lime, with the juice kept", "lime"],
    ["2 tbsp capers, in brine", "capers"],
    ["1 cup tomatoes, not salted", "tomato"],
  ])("[F61] %s: %s", (line, told) => {
    expect(foodIn(line)).toBe(told);
  });
});
