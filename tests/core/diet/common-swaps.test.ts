import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { checkMeal } from "../../../core/diet/check.ts";
import { withCommonSwaps } from "../../../core/diet/common-swaps.ts";
import type { Diet } from "../../../core/diet/diet.ts";
import { kindNamed } from "../../../core/diet/kind.ts";
import { readSwaps } from "../../../core/food/read-swaps.ts";
import type { Swap } from "../../../core/recipe/model.ts";
import { formatAmount, measured } from "../../../core/units/amount.ts";
import { ratio } from "../../../core/units/rational.ts";
import { butOf, dishWith, larder, mealOf, withPlainer } from "./diet-kit.ts";

const file = new URL("../../../recipes/foods/swaps.txt", import.meta.url);
const shipped = readSwaps("swaps.txt", await readFile(file, "utf8"), larder.foods);

function swapsFor(
  line: string,
  others: readonly string[] = [],
  diets: readonly Diet[] = [],
): readonly Swap[] {
  const table = { rules: shipped.swaps, larder, diets };
  return withCommonSwaps(mealOf(dishWith([line, ...others])), table).dishes[0]?.ingredients[0]?.swaps ?? [];
}

const told = ({ use, amount, effect }: Swap): string =>
  `${amount === null ? "as much" : formatAmount(amount)} ${use}${effect === null ? "" : `: ${effect}`}`;

describe("what may stand in by common practice", () => {
  it("[D25] the table that ships has no mistake, and is about foods that are known", () => {
    expect(shipped.mistakes).toEqual([]);
    expect(shipped.swaps.length).toBeGreaterThan(50);
    expect(shipped.swaps.filter(({ use }) => kindNamed(use, larder).foods.length === 0)).toEqual([]);
  });

  it.each([
    ["eggs for nothing\n  use  egg\n", 1, "eggs for nothing says not what for what."],
    ["a\n  for  moonberry\n  use  egg\n", 1, 'a: No food in the table is called "moonberry".'],
    ["a\n  for  egg\n  use  apple\n  take  lots\n", 1, 'a: "lots" is no factor; write one like 3/4.'],
    ["a\n  for  egg\n  use  apple\n  take  0\n", 1, 'a: "0" is no factor; write one like 3/4.'],
    [
      "a\n  for  egg\n  use  apple\n  time  later\n",
      1,
      'a: "later" is no change of time; write one like +10 min',
    ],
    [
      "a\n  with  egg\n",
      2,
      '"with  egg" is no line of a swap; write for, use, take, add, time, effect below a title.',
    ],
  ])("[D25] %j: line %d, %s", (text, line, sentence) => {
    const { mistakes } = readSwaps("swaps.txt", text, larder.foods);
    expect(mistakes.map((one) => [one.line, one.sentence.startsWith(sentence)])).toContainEqual([line, true]);
  });

  it.each([
    // Common practice, no source: vinegar and lemon in place of salt.
    ["1 tsp salt", "2 teaspoons lemon juice: Add it at the end and taste: sourness stands in for salt."],
    ["1 cup buttermilk", undefined],
    [
      "1 cup low-fat buttermilk",
      "3/4 cup plain low-fat yogurt: It goes with a quarter cup of water. Whisk it smooth with the water first.",
    ],
    [
      "2 eggs",
      "2 tablespoons flax seeds: It goes with six tablespoons of water. Grind it, stir it into the water and let it stand for ten minutes; it binds, and does not raise.",
    ],
    ["4 cloves garlic", "1/2 teaspoon garlic powder: Add it with the liquid, for it burns dry."],
    ["2 tbsp fresh ginger", "1/2 teaspoon ground ginger: Warmer and less sharp."],
  ])("[D26] for %s: %s", (line, first) => {
    expect(swapsFor(line).map(told)[0]).toBe(first);
  });

  it("[D26] what goes with it makes an ingredient of the dish grow, in that one's own unit", () => {
    const [yogurt] = swapsFor("1 cup low-fat buttermilk", ["500 ml water"]);
    // A quarter of a cup of 236.5882365 ml (NIST Handbook 44) and 500 ml.
    const [more] = yogurt?.changes ?? [];
    expect(more?.amount).toEqual(measured(ratio(5_591_470_591_25, 1_000_000_000), "ml"));
    expect(yogurt?.effect).toBe("Whisk it smooth with the water first.");
  });

  it("[D26] at most two besides the recipe's own, never the same food, and nothing that a diet does not allow", () => {
    expect(swapsFor("1 tbsp olive oil").map(({ use }) => use)).toEqual(["unsweetened applesauce", "water"]);
    expect(swapsFor("2 tbsp soy sauce").map(({ use }) => use)).toEqual(["lemon juice", "balsamic vinegar"]);
    const diet = butOf("citrus fruit: avoided", "lemon juice: avoided");
    expect(swapsFor("2 tbsp soy sauce", [], [diet]).map(({ use }) => use)).toEqual(["balsamic vinegar"]);
    expect(swapsFor("1 cup moonberries")).toEqual([]);
  });

  it("[D31] the same food without what is avoided goes first, once, and only where something speaks against it", () => {
    const diet = butOf("added salt: avoided");
    expect(swapsFor("2 tbsp salted butter", [], [diet]).map(told)[0]).toBe("as much unsalted butter");
    expect(swapsFor("1 cup canned tomatoes", [], [diet]).map(told)[0]).toBe(
      "as much unsalted canned tomatoes",
    );
    expect(swapsFor("1 cup canned tomatoes")[0]?.use).toBe("tomatoes");
    // How much is in a jar nobody knows, so nobody can say how much of another food it is.
    const withoutRules = (line: string): readonly string[] =>
      withPlainer(mealOf(dishWith([line])), diet).dishes.flatMap(({ ingredients }) =>
        ingredients.flatMap(({ swaps }) => swaps.map(told)),
      );
    expect(withoutRules("1 jar canned pinto beans, drained")).toEqual([]);
    expect(withoutRules("1 can canned pinto beans, drained")).toEqual([
      "1 1/2 cups cooked pinto beans: Have it cooked before it goes in; dried beans need a hard boil first.",
    ]);
    // In a tub of another butter there is as much.
    expect(withoutRules("1 tub salted butter")).toEqual(["as much unsalted butter"]);
  });

  it("[D26] put in a second time it offers no more", () => {
    const table = { rules: shipped.swaps, larder, diets: [] };
    const once = withCommonSwaps(mealOf(dishWith(["1 tbsp olive oil"])), table);
    expect(withCommonSwaps(once, table)).toEqual(once);
  });

  it("[D26] offered where a diet has something against an ingredient", () => {
    const diet = butOf("added salt: avoided");
    const table = { rules: shipped.swaps, larder, diets: [diet] };
    const meal = withCommonSwaps(mealOf(dishWith(["2 tbsp soy sauce", "1 tsp salt"])), table);
    expect(checkMeal(meal, [diet], larder, []).findings.map(({ mend }) => mend)).toEqual([
      "Take one tablespoon of lemon juice instead. Sour instead of salty; browned onion or mushrooms bring the depth back.",
      "Take two teaspoons of lemon juice instead. Add it at the end and taste: sourness stands in for salt.",
    ]);
  });
});
