import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import type { Ingredient } from "../../../core/recipe/model.ts";
import { formatAmount } from "../../../core/units/amount.ts";
import { BEAN_POT, complaints, dishOf, spoilt } from "./bean-pot.ts";

const page = await readFile(new URL("../../../docs/recipe-format.md", import.meta.url), "utf8");
const section = /## An ingredient on one line\n(.*?)\n## /s.exec(page)?.[1] ?? "";
const examples = [...section.matchAll(/`([a-z]+): ([^`]+)`/g)];

/** The ingredient of the bean pot that stands in the place of the greens. */
function greensAs(key: string, line: string): Ingredient | undefined {
  const renamed = BEAN_POT.replace("with: greens", `with: ${key}`);
  return dishOf(spoilt(renamed, "greens: 1 bunch, washed", `${key}: ${line}`)).ingredients[1];
}

function told(of: Ingredient | undefined): readonly unknown[] {
  return of === undefined ? [] : [formatAmount(of.amount), of.item, of.preparation, of.optional];
}

describe("an ingredient on one line", () => {
  it.each<[string, string, string, string, string | null, boolean]>([
    ["tomatoes", "1 (14.5 oz) can tomatoes, drained", "1 can", "tomatoes", "14 1/2 ounces, drained", false],
    ["chickpeas", "2 x 400 g tins chickpeas", "2 cans", "chickpeas", "400 grams each", false],
    [
      "broth",
      "1½ cups hot broth (360 ml), salt-free",
      "1 1/2 cups",
      "hot broth",
      "about 360 milliliters, salt-free",
      false,
    ],
    ["lemon-juice", "juice of 2 lemons", "2", "lemons", "juice", false],
    ["cumin", "a pinch of ground cumin (optional)", "1 pinch", "ground cumin", null, true],
    ["milk", "1,5 dl milk", "1 1/2 deciliters", "milk", null, false],
    ["almond-milk", "1 cup milk", "1 cup", "almond milk", null, false],
    ["garlic", "3 cloves, minced", "3 cloves", "garlic", "minced", false],
    ["garlic", "3 cloves garlic, minced", "3 cloves", "garlic", "minced", false],
    ["red-onion", "half an onion, sliced", "1/2", "red onion", "sliced", false],
    ["nutmeg", "nutmeg to taste, grated", "to taste", "nutmeg", "grated", false],
  ])("[U34] %s: %s", (key, line, ...expected) => {
    expect(told(greensAs(key, line))).toEqual(expected);
  });

  it.each<[string, string]>([
    [
      "1 cup flour",
      'The line is about "flour", but is named "greens"; use the same word in both, or write item and amount apart.',
    ],
    ["2 floozles", '"floozles" is not a unit I know; write one like cups, grams or cloves.'],
    ["washed", 'There is no amount in "washed"; write one, like 2 cups, or "to taste".'],
    [
      "1 cup greens, 2 cups cream",
      '"2 cups cream" may be a second ingredient; write it on a line of its own.',
    ],
    ["-1 bunch", '"-1 bunch" is less than nothing; write a number above nought.'],
    ["1,000 g greens", '"1,000" may be a thousand or one; write it without the comma, like 1000 or 1.5.'],
    [
      `1 cup ${"very ".repeat(12)}green greens`,
      `"${"very ".repeat(12)}green greens" has 72 characters; shorten it to 60.`,
    ],
    [`1 bunch, ${"well ".repeat(16)}washed`, "What is done to it has 86 characters; shorten it to 80."],
  ])("[U34] greens: %s is told once, with its line", (line, sentence) => {
    const text = spoilt(BEAN_POT, "greens: 1 bunch, washed", `greens: ${line}`);
    expect(complaints(text)).toEqual([[7, "ingredients.greens", sentence]]);
  });

  it("[U34] a word that two foods share does not make them one", () => {
    const text = BEAN_POT.replace("with: greens", "with: red-onion");
    const spoiled = spoilt(text, "greens: 1 bunch, washed", "red-onion: 1 bag red pepper");
    expect(complaints(spoiled)).toEqual([
      [
        7,
        "ingredients.red-onion",
        'The line is about "red pepper", but is named "red onion"; use the same word in both, or write item and amount apart.',
      ],
    ]);
  });

  it("[U34] every line that the page about the format shows is read", () => {
    expect(examples.length).toBeGreaterThanOrEqual(8);
    for (const [, key = "", line = ""] of examples.filter(([, , text]) => text !== "2 cups flour"))
      expect(told(greensAs(key, line))).toHaveLength(4);
  });
});
