import { describe, expect, it } from "vitest";
import { findFood } from "../../../core/food/find-food.ts";
import { weigh } from "../../../core/food/weigh.ts";
import { measured, parseAmount } from "../../../core/units/amount.ts";
import { ratio, rational, toNumber } from "../../../core/units/rational.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table } = await shippedFoods();

/** The NDB number, or why there is none. */
function foundAs(item: string, preparation: string | null = null): string | null {
  const found = findFood(table, item, preparation);
  return found.ok ? found.value.ndb : found.error;
}

/** Grams from least to most and the size that was taken, or why it cannot be known. */
function weighed(written: string, item: string, preparation: string | null = null) {
  const [amount, food] = [parseAmount(written), findFood(table, item, preparation)];
  if (!amount.ok || !food.ok) throw new Error(amount.ok ? (food.ok ? "" : food.error) : amount.error);
  const weight = weigh(food.value, amount.value, item, preparation);
  return weight.ok ? [weight.value.low, weight.value.high, weight.value.assumed] : weight.error;
}

const exactly = (grams: string, assumed: string | null = null) => [rational(grams), rational(grams), assumed];

describe("which food an ingredient is", () => {
  it.each([
    ["Red Lentils", null, "16144"],
    ["yellow onion", "chopped", "11282"],
    ["large ripe tomatoes", null, "11529"],
    ["small onions for the stock", null, "11282"],
    ["ripe olives", null, "09193"],
    ["garlic cloves", "minced", "11215"],
    ["warm water", null, "14411"],
  ])("[F6] %s, %s, is SR28 number %s", (item, preparation, ndb) => {
    expect(foundAs(item, preparation)).toBe(ndb);
  });

  it.each([
    [
      "chickpeas",
      'No food in the table is called "chickpeas"; it has dry chickpea, cooked chickpea, drained canned chickpea, rinsed canned chickpea.',
    ],
    ["moon berries", 'No food in the table is called "moon berries".'],
    ["onoin", 'No food in the table is called "onoin".'],
    ["", 'No food in the table is called "".'],
  ])("[F7] %s is none of them", (item, sentence) => {
    expect(foundAs(item)).toBe(sentence);
  });

  it.each([
    ["chickpeas", "cooked, drained", "16057"],
    ["chickpeas", "canned", 'The recipe says "canned", and the table has no canned food called "chickpeas".'],
    ["brown rice", "cooked", "20037"],
    ["lentils", "dried, rinsed", "16069"],
    [
      "brown rice",
      "soaked, ",
      'The recipe says "soaked", and the table has no soaked food called "brown rice".',
    ],
    ["lemon", "peeled", "09150"],
    ["basil", "dried", "02003"],
    ["canned tomatoes", "no salt added", "11885"],
    ["tomato sauce", "no added salt", "43217"],
    ["cooked white beans", "no salt added, drained and rinsed", "16050"],
    [
      "canned crushed tomatoes",
      "no salt added",
      "The recipe says without salt, and the table has only canned crushed tomato.",
    ],
    [
      "parsnip",
      "roasted and mashed",
      'The recipe says "roasted", and the table has no roasted food called "parsnip".',
    ],
  ])("[F8] %s, %s: %s", (item, preparation, told) => {
    expect(foundAs(item, preparation)).toBe(told);
  });
});

describe("what it weighs", () => {
  it("[F9] a weight is exact, by the pound of 453.59237 g (NIST Handbook 44, appendix C)", () => {
    expect(weighed("1 1/2 lb", "mushrooms", "sliced").at(1)).toBe(rational("136077711/200000"));
    expect(weighed("1 1/2 lb", "red lentils")).toEqual(exactly("136077711/200000"));
    expect(weighed("200-250 g", "red lentils")).toEqual([rational("200"), rational("250"), null]);
  });

  it.each([
    ["1 1/2 cups", "red lentils", null, "288"],
    ["1 cup", "carrots", "sliced", "122"],
    ["1 cup", "onion", "chopped", "160"],
    ["1 cup", "carrots", "grated", "110"],
    ["1/4 cup", "cilantro", "chopped", "4"],
    ["2 tbsp", "parsley", null, "38/5"],
  ])("[F10] %s of %s, %s, by its own cup or spoon in SR28: %s g", (amount, item, preparation, grams) => {
    expect(weighed(amount, item, preparation)).toEqual(exactly(grams));
  });

  it("[F10] a spoon without a measure of its own is a sixteenth of the cup of 244 g (SR28 number 09152)", () => {
    expect(weighed("1 tbsp", "lemon juice")).toEqual(exactly("61/4"));
  });

  it("[F10] a metric cup goes by the density: 250 mL of 244 g in 236.5882365 mL", () => {
    const weight = weighed("1 metric cup", "lemon juice");
    expect(toNumber(rational(String(weight[0])))).toBeCloseTo((250 * 244) / 236.5882365, 9);
  });

  it("[F10] where nothing tells how the cup is filled, both ends are kept", () => {
    expect(weighed("1 cup", "carrots")).toEqual([rational("110"), rational("128"), null]);
  });

  it.each([
    ["3 cloves", "garlic", null, "9", null],
    ["3", "garlic cloves", null, "9", null],
    ["1", "onion", "chopped", "110", "medium"],
    ["1/2", "red onion", "diced small", "55", "medium"],
    ["2", "large onions", null, "300", null],
    ["1", "onion", "large", "150", null],
    ["1/2 head", "green cabbage", null, "454", "medium"],
    ["2 stalks", "celery", null, "80", "medium"],
    ["1", "leek", null, "89", null],
    ["1", "egg", null, "50", null],
  ])("[F11] %s %s, %s: %s g", (amount, item, preparation, grams, assumed) => {
    expect(weighed(amount, item, preparation)).toEqual(exactly(grams, assumed));
  });

  it("[F11] small and large papayas without a medium one: both ends", () => {
    expect(weighed("1", "papaya")).toEqual([rational("157"), rational("781"), null]);
  });

  /** Paprika: 2.3 g a teaspoon (SR28 number 02028). The spoons that are sold as a pinch: common practice, no source. */
  it("[F37] a pinch is a thirty-second to an eighth of a teaspoon, and told", () => {
    const [amount, food] = [parseAmount("2 pinches"), findFood(table, "paprika", null)];
    if (!amount.ok || !food.ok) throw new Error("no paprika");
    expect(weigh(food.value, amount.value, "paprika", null)).toEqual({
      ok: true,
      value: {
        low: rational("23/160"),
        high: rational("23/40"),
        assumed: null,
        note: "A pinch is taken as a thirty-second to an eighth of a teaspoon.",
      },
    });
  });

  it.each([
    ["1 can", "canned tomatoes", "What a can of canned tomato weighs is not in the table; weigh it."],
    ["1", "celery", "What one celery weighs is not in the table; weigh it."],
    ["1", "large leek", "What a large leek weighs is not in the table; weigh it."],
    ["to taste", "salt", "It goes in to taste, so it has no weight."],
  ])("[F12] %s of %s is not known", (amount, item, sentence) => {
    expect(weighed(amount, item)).toBe(sentence);
  });
});

it("[F30] nuts are weighed without their shells unless the line says otherwise: common practice, no source", () => {
  const almond = table.get("almond");
  const weight = (item: string): readonly number[] => {
    const read = almond === undefined ? null : weigh(almond, measured(ratio(100), "g"), item, null);
    return read?.ok === true ? [toNumber(read.value.low), toNumber(read.value.high)] : [];
  };
  expect(weight("almonds")).toEqual([100, 100]);
  // USDA SR28 12061: 60 % of almonds in the shell is refuse.
  expect(weight("almonds in the shell")).toEqual([40, 40]);
});
