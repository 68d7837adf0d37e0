import { describe, expect, it } from "vitest";
import { readPreparation } from "../../../core/mise/preparation.ts";
import { preparationWords } from "../../../core/mise/preparation-words-table.ts";

/** Verbs with what stands behind them, and the words that were kept. */
const read = (text: string): readonly [readonly string[], readonly string[]] => {
  const { acts, words } = readPreparation(text);
  return [
    acts.map(({ manner, verb, rest }) => [manner, verb, rest].filter((one) => one !== "").join(" ")),
    words,
  ];
};

describe("preparations as recipes write them", () => {
  it.each([
    ["minced", ["mince"]],
    ["drained and rinsed", ["drain", "rinse"]],
    ["rinsed and picked over", ["rinse", "pick over"]],
    ["finely chopped", ["finely chop"]],
    ["peeled, seeded, and cubed", ["peel", "seed", "cube"]],
    ["peeled and cut into thin sticks", ["peel", "cut into thin sticks"]],
    ["cut into sticks and rounds", ["cut into sticks and rounds"]],
    ["rinsed, then patted dry", ["rinse", "pat dry"]],
    ["well rinsed", ["rinse well"]],
    ["sliced 1/4 inch thick", ["slice 1/4 inch thick"]],
  ])("[M1] %s", (text, verbs) => {
    expect(read(text)).toEqual([verbs, []]);
  });

  it.each([
    ["no salt added, drained", ["drain"], ["no salt added"]],
    ["400 grams each, drained and rinsed", ["drain", "rinse"], ["400 grams each"]],
    ["drained, liquid reserved", ["drain"], ["liquid reserved"]],
    ["ripe but firm", [], ["ripe but firm"]],
    ["ground", [], ["ground"]],
    ["tops cut off", [], ["tops cut off"]],
    ["peeled if old", [], ["peeled if old"]],
    ["1/2 chopped, 1/2 sliced", [], ["1/2 chopped, 1/2 sliced"]],
  ])("[M2] %s: what is not understood, or depends, stays in the recipe's words", (text, verbs, words) => {
    expect(read(text)).toEqual([verbs, words]);
  });

  it("[M1] no word of the table is lost: each comes to its own verb", () => {
    for (const [done, { verb, place }] of preparationWords) {
      const [act, ...more] = readPreparation(done).acts;
      expect(more).toEqual([]);
      expect([`${act?.verb ?? ""} ${act?.rest ?? ""}`.trim(), act?.place]).toEqual([verb, place]);
    }
  });
});
