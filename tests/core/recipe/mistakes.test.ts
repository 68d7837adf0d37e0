import { describe, expect, it } from "vitest";
import { BEAN_POT, complaints, spoilt } from "./bean-pot.ts";
import { sense, shape, texts, written } from "./mistakes-table.ts";

describe("a mistake in a dish", () => {
  it("[R9] a dish without a mistake has none", () => {
    expect(complaints(BEAN_POT)).toEqual([]);
  });

  it.each(shape)(
    "[R10] %s is named with its line, its field and what to write",
    (_, from, to, ...expected) => {
      expect(complaints(spoilt(BEAN_POT, from, to))).toContainEqual(expected);
    },
  );

  it.each(texts)("[R11] %s is refused with what was written", (_, from, to, ...expected) => {
    expect(complaints(spoilt(BEAN_POT, from, to))).toContainEqual(expected);
  });

  it.each(sense)("[R12] %s is found", (_, from, to, ...expected) => {
    expect(complaints(spoilt(BEAN_POT, from, to))).toContainEqual(expected);
  });

  it.each(written)("[R13] %s is told in words a cook knows", (_, from, to, ...expected) => {
    expect(complaints(spoilt(BEAN_POT, from, to))).toContainEqual(expected);
  });

  it("[R10] a sentence of more than 140 characters is too long for the screen", () => {
    const of = (length: number): string => spoilt(BEAN_POT, "Cut the greens.", `${"a".repeat(length - 1)}.`);
    expect(complaints(of(140))).toEqual([]);
    expect(complaints(of(141))).toEqual([
      [12, "steps.cut-the-greens.do", '"do" has 141 characters; shorten it to 140, or make two of it.'],
    ]);
  });

  it("[R12] a dish without steps or ingredients is not a dish", () => {
    const head = "dish: Air\nabout: Nothing.\nyield: 1\n";
    expect(complaints(`${head}ingredients: {}\nsteps: {}\n`)).toEqual([
      [4, "ingredients", "This dish has no ingredients; list at least one."],
      [5, "steps", "This dish has no steps; write at least one."],
    ]);
  });

  it.each<[string, string]>([
    ["a list", "- a\n- b\n"],
    ["a bare word", "soup\n"],
    ["a number", "7\n"],
  ])("[R10] %s is no recipe", (what, text) => {
    const kinds: Readonly<Record<string, string>> = {
      "a list": "a list",
      "a bare word": "text",
      "a number": "a number",
    };
    expect(complaints(text)).toEqual([
      [1, "", `"this file" should be a set of keys with values, not ${kinds[what] ?? ""}.`],
    ]);
  });

  it("[R14] all the mistakes of a file are told at once, in the order of its lines", () => {
    const text = [
      ["water: 2 cups", "water: 2 floozles"],
      ["time: 4-6 min", "time: soon"],
      ["hands: off", "hands: of"],
      ["after: nothing", "after: whistle"],
      ["with: [water, pepper]", "with: [water, pepper, lemon]"],
      ["    time: 5 min", "    tiem: 5 min"],
    ].reduce((spoiling, [from = "", to = ""]) => spoilt(spoiling, from, to), BEAN_POT);
    expect(complaints(text).map(([line, field]) => [line, field])).toEqual([
      [8, "ingredients.water"],
      [14, "steps.cut-the-greens.time"],
      [18, "steps.boil-the-beans.hands"],
      [24, "steps.finish-the-pot.time"],
      [27, "steps.finish-the-pot.tiem"],
    ]);
  });

  it("[R14] a broken step is not taken for a step that is missing", () => {
    const text = spoilt(BEAN_POT, "time: 4-6 min", "time: soon");
    expect(complaints(text)).toHaveLength(1);
  });
});
