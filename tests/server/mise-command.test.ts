import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { MiseJson } from "../../server/cli/mise.ts";
import { miseCommand } from "../../server/cli/mise.ts";
import { runCli } from "../../server/cli/run-cli.ts";

let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
});

const mise = (...words: readonly string[]): Promise<number> => runCli(["mise", ...words], [miseCommand]);

describe("mise en place on the command line", () => {
  it("[M9] what to prepare over all dishes, with the step and the minute it is for; 80 letters wide", async () => {
    expect([await mise("welcome-supper"), told]).toEqual([0, []]);
    expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
    expect(out[0]).toBe("Welcome Supper: prepare");
    const text = out.join("\n");
    expect(text).toMatch(/rinse and pick over 1½ cups of red lentils\n +- Soup: simmer the soup, minute \d+/);
    expect(text).toContain("The steps themselves see to: chop the onion; cut the carrots;");
    // The soup's step tells the cook to mince it.
    expect(text).not.toContain("garlic");
  });

  it("[M9] the same for another program, amounts exact", async () => {
    expect([await mise("slack-water-lunch", "--json"), told, out.length]).toEqual([0, [], 1]);
    const meal = JSON.parse(out[0] ?? "") as MiseJson;
    expect(meal.caution).toBeNull();
    expect(meal.prepare.find(({ food }) => food === "cooked white beans")).toEqual({
      do: "drain and rinse 1½ cups of cooked white beans, no salt added",
      food: "cooked white beans",
      amounts: ["1 1/2 cups"],
      optional: false,
      for: [
        {
          dish: "white-bean-spread",
          step: "blend-the-beans",
          amount: "1 1/2 cups",
          atMin: expect.any(Number) as number,
        },
      ],
    });
    const minutes = meal.prepare.map((one) => one.for[0]?.atMin ?? -1);
    expect(minutes[0]).toBe(Math.min(...minutes));
  });

  it.each([
    [[], 2, "Name the meal to prepare, for instance: mise welcome-supper"],
    [["welcome-supper", "again"], 2, 'mise takes one meal; "again" is one word too many.'],
    [["welcome-supper", "--short"], 2, "There is no option --short."],
    [
      ["no-such-meal"],
      1,
      "There is no meal called no-such-meal. There are: fog-bell-breakfast, slack-water-lunch, welcome-supper.",
    ],
  ])("[M9] mise %j is answered with one sentence", async (words, code, sentence) => {
    expect([await mise(...words), told, out]).toEqual([code, [sentence], []]);
  });
});
