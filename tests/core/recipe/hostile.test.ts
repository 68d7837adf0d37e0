import { describe, expect, it } from "vitest";
import { BEAN_POT, complaints, dishOf, spoilt } from "./bean-pot.ts";

/** A dish of many steps, each using a cup of the same water. */
function longDish(steps: number): string {
  const head = `dish: Long Stew\nabout: Many steps.\nyield: 4\ningredients:\n  water: ${steps} cups\nsteps:\n`;
  const step = (_: unknown, index: number): string =>
    `  step-${index}:\n    do: Add a cup of water and stir.\n    with: { water: 1 cup }\n    time: 1-2 min\n`;
  return head + Array.from({ length: steps }, step).join("");
}

/** Processor time of the fastest of three runs, so that a busy machine does not count. */
function cpuMilliseconds(work: () => unknown): number {
  const runs = [1, 2, 3].map(() => {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  return Math.min(...runs);
}

describe("files that nobody cooks from", () => {
  it("[R15] two hundred steps are read, exactly and in less than a second", () => {
    const text = longDish(200);
    const dish = dishOf(text);
    expect(dish.steps).toHaveLength(200);
    expect(dish.steps[199]?.after).toEqual([{ step: "step-198", atLeast: 0, atMost: null }]);
    expect(cpuMilliseconds(() => dishOf(text))).toBeLessThan(1000);
  });

  it("[R15] a circle of two hundred steps is found and named", () => {
    const text = spoilt(longDish(200), "time: 1-2 min\n", "time: 1-2 min\n    after: step-199\n");
    const [only, ...others] = complaints(text);
    expect(others).toEqual([]);
    const named = Array.from({ length: 7 }, (_, index) => `"step-${index}"`).join(", ");
    expect(only?.[2]).toBe(
      `The steps ${named} and 193 more wait for each other in a circle; change the "after" of one of them.`,
    );
  });

  it("[R15] a megabyte is refused before it is parsed", () => {
    const text = longDish(20_000);
    expect(text.length).toBeGreaterThan(1_000_000);
    expect(complaints(text)).toEqual([
      [1, "", "This file is far too long for a recipe; split it into dishes of their own."],
    ]);
    expect(cpuMilliseconds(() => complaints(text))).toBeLessThan(50);
  });

  it.each<[string, string]>([
    ["brackets", "[".repeat(100_000)],
    ["braces with keys", "{a: ".repeat(50_000)],
    ["dashes", "- ".repeat(100_000)],
    ["question marks", "? ".repeat(100_000)],
    ["indentation", Array.from({ length: 600 }, (_, depth) => `${" ".repeat(depth)}a:`).join("\n")],
  ])("[R15] %s nested without end are refused and end nothing", (_, text) => {
    expect(complaints(text).map(([, , sentence]) => sentence)).toEqual([
      "This line is nested too deeply; write the recipe in plain lines.",
    ]);
  });

  it("[R15] pointers to pointers are refused and not multiplied out", () => {
    const bomb = Array.from({ length: 9 }, (_, level) =>
      level === 0 ? "a0: &a0 [stir]" : `a${level}: &a${level} [${`*a${level - 1}, `.repeat(9)}]`,
    ).join("\n");
    expect(complaints(bomb)[0]).toEqual([
      2,
      "",
      "A star points to another place in the file; write the text out here instead.",
    ]);
  });

  it("[R15] an empty file and a file of nothing but remarks are said to be empty", () => {
    const empty = [[1, "", "This file is empty; write a recipe or take it away."]];
    expect(complaints("")).toEqual(empty);
    expect(complaints("# a remark\n")).toEqual(empty);
  });

  it("[R15] names that mean something to a program are only names that are refused", () => {
    const text = spoilt(BEAN_POT, "ingredients:\n", "ingredients:\n  __proto__: 1 cup\n");
    expect(complaints(text)).toContainEqual([6, "", '"__proto__" cannot be a name; choose another word.']);
  });
});
