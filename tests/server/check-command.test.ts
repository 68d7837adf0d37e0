import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { parseEvent } from "../../core/cook/parse.ts";
import { TableRules } from "../../server/kitchen/table-rules.ts";
import { loadLabelled } from "../../server/pantry/load-pantry.ts";
import type { MealCheckJson } from "../../server/cli/check-json.ts";
import { checkCommand } from "../../server/cli/check.ts";
import { inProgram } from "../../server/cli/in-program.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { eatenBefore } from "../../server/kitchen/eaten-book.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { days, plus } from "../../core/units/quantity.ts";
import { CookedEvenings } from "./cooked-evenings.ts";
import { five } from "./small-meal.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "check-"));
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const check = (...words: readonly string[]): Promise<number> =>
  runCli(["check", ...words, "--data", folder], [checkCommand]);

/** A folder of recipes with one dish of a teaspoon of each food, and diets. */
function pantry(foods: readonly string[], diets: Readonly<Record<string, string>>): string {
  const write = (place: string, text: string): void => {
    mkdirSync(join(folder, place, ".."), { recursive: true });
    writeFileSync(join(folder, place), text);
  };
  write("kitchens/galley.yaml", "kitchen: The galley\nburners: 1\n");
  const items = foods.map((item, index) => `  i${index}: { item: ${item}, amount: 1 tsp }\n`).join("");
  const all = foods.map((_, index) => `i${index}`).join(", ");
  write(
    "dishes/pot.yaml",
    `dish: Pot\nabout: A pot.\nyield: 4 bowls\ningredients:\n${items}steps:\n  boil:\n    do: Boil it.\n    with: [${all}]\n    time: 5 min\n`,
  );
  write(
    "meals/supper.yaml",
    "meal: Supper\nabout: A pot.\nkitchen: galley\ndiets: [named]\ndishes:\n  pot: 4\n",
  );
  for (const [name, text] of Object.entries(diets)) write(`diets/${name}.yaml`, text);
  return join(folder, "meals/supper.yaml");
}

const diet = (foods: string, more = ""): string =>
  `diet: "${foods}"\nabout: Made up.\nmay-eat: all but what is listed\nfoods: {${foods}}\n${more}`;

describe("a meal held against a diet on the command line", () => {
  it("[D23] for people: what is not allowed first, how to mend it, the caution; 80 letters wide; exit 1", async () => {
    const meal = pantry(["chili powder", "curry powder", "onion"], {
      named: diet("added salt: avoided"),
      other: diet("onion: avoided"),
    });
    expect([await check(meal), told]).toEqual([1, []]);
    expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
    const text = out.join(" ").replace(/ +/g, " ");
    expect(out[0]).toBe("Supper, by added salt: avoided");
    expect(out[2]).toBe("Not allowed: chili powder, Pot (one teaspoon of chili powder)");
    expect(text).toContain("I cannot tell: curry powder, Pot");
    expect(text).toContain("1 of 3 ingredients are allowed as they stand.");
    expect(text).toContain("This is no medical advice");
    expect(text).not.toContain("Onion is avoided");
  });

  it("[D23] for programs; a diet for every meal holds with those that the meal names", async () => {
    const meal = pantry(["chili powder", "onion"], {
      named: diet("added salt: avoided"),
      other: diet("onion: avoided", "every-meal: true\n"),
    });
    expect([await check(meal, "--json"), told, out.length]).toEqual([1, [], 1]);
    const answer = JSON.parse(out[0] ?? "") as MealCheckJson;
    expect([answer.diets, answer.verdict]).toEqual([["named", "other"], "not-allowed"]);
    expect(
      answer.findings.map(({ diet: of, rule, dish, ingredient, verdict }) => [
        of,
        rule,
        dish,
        ingredient,
        verdict,
      ]),
    ).toEqual([
      ["added salt: avoided", "added salt: avoided", "Pot", "chili powder", "not-allowed"],
      ["onion: avoided", "onion: avoided", "Pot", "onion", "not-allowed"],
    ]);
    expect(answer.findings.every(({ why }) => why !== "")).toBe(true);
    expect(answer.caution).toContain("no medical advice");
  });

  it("[D23] exit 0 only where all is allowed; a diet may be named, by its name or its file", async () => {
    const meal = pantry(["curry powder"], {
      named: diet("added salt: avoided"),
      fine: diet("rice: avoided"),
    });
    expect(await check(meal)).toBe(1);
    expect(await check(meal, "--diet", "fine")).toBe(0);
    expect(await check(meal, "--diet", join(folder, "diets/fine.yaml"))).toBe(0);
    expect(await check(meal, "--diet", "fine", "--diet", "named")).toBe(1);
    expect([told, out.join(" ")]).toEqual([[], expect.stringContaining("Allowed by rice: avoided.")]);
  });

  it.each([
    [["nowhere"], "There is no meal called nowhere."],
    [["MEAL", "--diet", "nowhere"], "There is no diet called nowhere. There are: named."],
    [["MEAL", "--diet", "nowhere.yaml"], "diets/nowhere.yaml, line 1: This diet cannot be read"],
  ])("[D23] %j: %s", async (words, sentence) => {
    const meal = pantry(["onion"], { named: diet("rice: avoided") });
    const code = await check(...words.map((word) => (word === "MEAL" ? meal : word)));
    expect([code, told.join(" "), out]).toEqual([1, expect.stringContaining(sentence), []]);
  });

  it("[D23] a meal whose dish cannot be read is told by the mistake in the dish", async () => {
    const meal = pantry(["onion"], { named: diet("rice: avoided") });
    const dish = join(folder, "dishes/pot.yaml");
    writeFileSync(dish, readFileSync(dish, "utf8").replace("time: 5 min", "time: soon"));
    expect(await check(meal)).toBe(1);
    expect(told.join(" ")).toMatch(/^dishes\/pot\.yaml, line \d+: /);
  });

  it("[D23] a meal without a diet, a diet that is not there, and one with a mistake", async () => {
    const without = pantry(["onion"], {});
    expect([await check(without), told.pop()]).toEqual([
      1,
      "There is no diet called named. There is none at all.",
    ]);
    const wrong = pantry(["onion"], { named: diet("rice: avoided"), other: diet("rice: now and then") });
    expect(await check(wrong)).toBe(1);
    expect(told.pop()).toContain('diets/other.yaml, line 4: "now and then" is no rule for a food');
  });

  it.each([
    [[], "Name the meal to check, for instance: check welcome-supper"],
    [["one", "two"], 'check takes one meal; "two" is one word too many.'],
    [["one", "--strict"], "There is no option --strict."],
  ])("[D23] %j is a misuse: %s", async (words, sentence) => {
    expect([await check(...words), told]).toEqual([2, [sentence]]);
  });
});

describe("what was eaten, by the log", () => {
  it("[D15] the meals of the last seven days, the dishes that were cooked, by the day", () => {
    const database = openMealDatabase(folder);
    if (!database.ok) throw new Error(database.error.code);
    const store = new SqliteMealStore(database.value, parseEvent);
    const evenings = new CookedEvenings(store);
    for (const day of [0, 3, 9]) evenings.cook(day, 5, { type: "Tick" });
    const eaten = eatenBefore(store, plus(five, days(9)));
    store.close();
    expect(
      eaten.ok ? eaten.value.map(({ daysAgo, dishes }) => [daysAgo, dishes.map(({ name }) => name)]) : [],
    ).toEqual([
      [0, ["Leek soup"]],
      [6, ["Leek soup"]],
    ]);
  });
});

describe("the diets that ship", () => {
  it("[D24] are read without a mistake; one holds for every meal", async () => {
    const foods = await loadLabelled(inProgram("recipes"));
    const rules = await TableRules.load(inProgram("recipes"), foods.ok ? foods.value : null);
    if (!rules.ok) throw new Error(rules.error);
    const diets = rules.value.dietsFor(["creek-clinic"]);
    expect(diets.ok ? diets.value.map(({ id, isEveryMeal }) => [id, isEveryMeal]) : diets.error).toEqual([
      ["creek-clinic", false],
      ["lamp-room", true],
    ]);
  });

  it("[D24] the lunch is allowed, the supper and the breakfast but for what nobody can tell", async () => {
    expect([await check("slack-water-lunch"), out.join(" ")]).toEqual([
      0,
      expect.stringContaining("Allowed by The Lamp Room Diet."),
    ]);
    const untold = async (meal: string): Promise<readonly (readonly (string | null)[])[]> => {
      out = [];
      expect(await check(meal, "--json")).toBe(1);
      const answer = JSON.parse(out[0] ?? "") as MealCheckJson;
      expect(answer.verdict).toBe("cannot-tell");
      return answer.findings.map(({ ingredient, mend }) => [ingredient, mend]);
    };
    // What may be left out and has no figures, and what some makers put oil on.
    expect(await untold("welcome-supper")).toContainEqual([
      null,
      "Leave nigella seeds out; the recipe can do without.",
    ]);
    expect(await untold("fog-bell-breakfast")).toEqual([
      ["raisins", "Take a quarter cup of prunes instead. Chop them."],
    ]);
  });
});
