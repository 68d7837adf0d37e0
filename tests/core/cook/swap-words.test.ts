import { describe, expect, it } from "vitest";
import { stepsNaming } from "../../../core/cook/swap-words.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { dishWith } from "../diet/diet-kit.ts";
import { dish as ovenDish, handsOn, mins } from "../plan/small-meals.ts";

/** A dish of these lines with one step that says this. */
function saying(text: string, lines: readonly string[]): Dish {
  const { steps } = ovenDish("pot", [handsOn("stir", mins(5))]);
  return { ...dishWith(lines), steps: steps.map((step) => ({ ...step, do: text })) };
}

function told(text: string, use: string, ...lines: readonly string[]): string {
  const dish = saying(text, lines);
  const [ingredient] = dish.ingredients;
  if (ingredient === undefined) throw new Error("no ingredient");
  return stepsNaming(dish, ingredient, use)[0]?.do ?? "";
}

describe("what steps say once something else is used", () => {
  it.each([
    ["Stir in the chili powder.", "paprika", "1 tsp chili powder", "Stir in the paprika."],
    ["Chili powder goes in now.", "paprika", "1 tsp chili powder", "Paprika goes in now."],
    ["Pour in the buttermilk.", "plain yogurt", "1 cup low-fat buttermilk", "Pour in the plain yogurt."],
    ["Rinse the lentils.", "brown lentils", "1 cup red lentils", "Rinse the brown lentils."],
    ["Slice each leek.", "red onion", "2 leeks", "Slice each red onion."],
    // A deed, another food, and what only has it in its name.
    ["Salt the water.", "lemon juice", "1 tsp salt", "Salt the water."],
    [
      "Taste; it is a salt-free, unsalted pot.",
      "lemon juice",
      "1 tsp salt",
      "Taste; it is a salt-free, unsalted pot.",
    ],
  ])("[D34] %s, with %s for %s: %s", (text, use, line, then) => {
    expect(told(text, use, line)).toBe(then);
  });

  it("[D34] a word that several ingredients end in, and the name of another one, stay", () => {
    expect(told("Dice the onions.", "fennel", "1 red onion", "2 white onions")).toBe("Dice the onions.");
    expect(told("Dice the red onion.", "fennel", "1 red onion", "2 white onions")).toBe("Dice the fennel.");
    expect(
      told("Add the garlic salt, then the salt.", "lemon juice", "1 tsp salt", "1 tsp garlic salt"),
    ).toBe("Add the garlic salt, then the lemon juice.");
  });
});
