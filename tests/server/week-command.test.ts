import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Order } from "../../core/cook/orders.ts";
import { parseEvent } from "../../core/cook/parse.ts";
import { leftoverId } from "../../core/house/leftover.ts";
import { parseHouseEvent } from "../../core/house/parse.ts";
import { taskId } from "../../core/plan/model.ts";
import { dishId } from "../../core/recipe/model.ts";
import { ratio } from "../../core/units/rational.ts";
import { inProgram } from "../../server/cli/in-program.ts";
import { Household } from "../../server/kitchen/household.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { noteMeals } from "../../server/kitchen/note-meals.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteHouseStore } from "../../server/store/sqlite-house-store.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { at, five } from "../core/cook/supper.ts";
import { emptyHouseLog } from "../../core/house/house.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import type { WeekJson } from "../../server/cli/week-json.ts";
import { weekCommand } from "../../server/cli/week.ts";
import { keepHouse, wantIn } from "./kept-house.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];
beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "week-"));
  keepHouse(folder, emptyHouseLog);
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const week = (...words: readonly string[]): Promise<number> =>
  runCli(["week", ...words, "--data", folder], [weekCommand]);

it("[D44] the week that ships, for people: day by day, what is left, one list; 80 letters wide", async () => {
  // The supper has an ingredient without figures that may be left out, so nobody can say yes to all of it.
  expect([await week("tide-week"), told]).toEqual([1, []]);
  expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
  const text = out.join(" ").replace(/ +/g, " ");
  expect(out[0]).toBe("A Week of Tides, for 2");
  expect(text).toContain("Tuesday what is left of Smoky Lentil Soup, allowed");
  expect(text).toContain("The whole week: I cannot tell.");
  expect(text).toContain(
    "2 servings of Crisp Cabbage Salad from Monday are in no meal: eat by Thursday or freeze",
  );
  expect(text).toContain("What to buy for Welcome Supper and Slack Water Lunch");
  expect(text).toMatch(/garlic: 9 cloves, about a head/);
  expect(text).toContain("This is no medical advice");
});

it("[D44] for programs, and what is in the house comes off the list", async () => {
  const have = join(folder, "have.txt");
  writeFileSync(have, "9 cloves garlic\nhalf a moon\n");
  expect(await week("tide-week", "--have", have, "--json")).toBe(1);
  expect(told).toEqual([]);
  const answer = JSON.parse(out[0] ?? "") as WeekJson;
  expect([answer.verdict, answer.eaters]).toEqual(["cannot-tell", 2]);
  expect(answer.days.map(({ day, sittings }) => [day, sittings.length])).toEqual([
    ["monday", 1],
    ["tuesday", 2],
    ["thursday", 1],
    ["friday", 2],
  ]);
  expect(answer.shop.enough.map(({ name }) => name)).toContain("garlic");
  expect(answer.unused.length).toBe(6);
});

it("[B44] what the house wants besides stands on the week's list too", async () => {
  wantIn(folder, "kitchen paper", "candles!");
  await week("tide-week");
  const at = out.indexOf("ALSO WANTED");
  expect(out.slice(at, at + 3)).toEqual(["ALSO WANTED", "[ ]  kitchen paper", ""]);
  out = [];
  await week("tide-week", "--json");
  expect((JSON.parse(out[0] ?? "") as WeekJson).shop.alsoWanted).toEqual(["kitchen paper"]);
});

/** Two evenings ago the supper that ships was cooked, and of its soup so many bowls were put away. */
async function soupOfTheSupper(bowls: number): Promise<void> {
  const book = await MealBook.open(inProgram("recipes"));
  const database = openMealDatabase(folder);
  if (!database.ok) throw new Error(database.error.code);
  let ids = 0;
  const parts = { now: () => five, newId: () => `id-${(ids += 1)}` };
  const evenings = new SqliteMealStore(database.value, parseEvent);
  const kitchen = Kitchen.open({ store: evenings, meal: (id, of) => book.meal(id, of), ...parts });
  const houses = new SqliteHouseStore(database.value, parseHouseEvent);
  const household = Household.open({ store: houses, ...parts });
  if (!kitchen.ok || !household.ok) throw new Error("no kitchen");
  const begun = kitchen.value.begin({ id: "begin", meal: "welcome-supper", servings: {}, serveAt: null });
  if (!begun.ok) throw new Error(begun.sentence);
  const noted = { kitchen: kitchen.value, household: household.value, store: evenings, foods: book.foods() };
  noteMeals({ ...noted, report: () => undefined });
  const give = (order: Order): void => {
    const session = kitchen.value.snapshot().session ?? "";
    const given = kitchen.value.order({ session, id: parts.newId(), at: five, order });
    if (!given.ok) throw new Error(given.sentence);
  };
  give({ type: "FinishTask", task: taskId("lentil-soup/chop-the-onion") });
  give({ type: "EndMeal" });
  const rest = { kind: "servings", servings: ratio(bowls) } as const;
  const stored = household.value.order({
    id: "store",
    at: five,
    order: {
      type: "StoreLeftover",
      id: leftoverId("soup"),
      dish: dishId("lentil-soup"),
      name: "soup",
      rest,
      place: "fridge",
    },
  });
  if (!stored.ok) throw new Error(stored.sentence);
  evenings.close();
}

describe("what is in the fridge as the week begins", () => {
  const days = 24 * 60;
  const file = (...lines: readonly string[]): string => {
    const name = join(folder, "w.yaml");
    writeFileSync(name, `week: W\neaters: 2\ndays:\n${lines.map((line) => `  ${line}\n`).join("")}`);
    return name;
  };
  const json = async (minute: number, name: string): Promise<WeekJson> => {
    vi.useFakeTimers({ now: at(minute), toFake: ["Date"] });
    out = [];
    await week(name, "--json");
    return JSON.parse(out[0] ?? "") as WeekJson;
  };
  // The week's file lies beside no diets and no meals of its own: only what is left is eaten.
  const shipped = (): string => join(inProgram("recipes"), "weeks", "tide-week.yaml");

  it("[G21] counts for its meals, and the list to buy tells it; spoiled it is warned of", async () => {
    await soupOfTheSupper(3);
    const name = file("monday: [{ leftover: lentil-soup }]");
    const good = await json(days, name);
    expect(good.days[0]?.sittings[0]).toMatchObject({
      name: "what is left of Smoky Lentil Soup",
      troubles: [],
    });
    expect(good.unused).toEqual([
      expect.stringMatching(/^one serving of Smoky Lentil Soup from the fridge is in no meal/),
    ]);
    const spoiled = await json(days * 7, name);
    expect(spoiled.fridge).toEqual([
      "Smoky Lentil Soup, 3 bowls, in the fridge, is past its day: throw it away.",
    ]);
    expect(spoiled.verdict).toBe("not-allowed");
    const all = await json(days, shipped());
    expect(all.shop.fridge).toMatchObject([{ kind: "dish", dish: "lentil-soup", servings: 3 }]);
    expect((await json(days * 7, shipped())).shop.fridge).toMatchObject([{ kind: "throw-away" }]);
  });

  it("[G23] without a log it is told that nothing is known of the fridge, and the week is checked all the same", async () => {
    const bare = join(folder, "bare");
    expect(await runCli(["week", "tide-week", "--data", bare], [weekCommand])).toBe(1);
    expect(told).toEqual([
      expect.stringMatching(/^There is no meal log in .* So nothing is known of the house\.$/),
    ]);
    expect(out[0]).toBe("A Week of Tides, for 2");
  });
});

it.each([
  [[], 2, "Name the week to check, for instance: week tide-week"],
  [["one", "two"], 2, 'week takes one week; "two" is one word too many.'],
  [["nowhere"], 1, "There is no week nowhere. Name one in recipes/weeks, or the path of its file."],
  [["tide-week", "--have", "nowhere.txt"], 1, "nowhere.txt cannot be read."],
])("[D44] %j ends with %d: %s", async (words, code, sentence) => {
  expect([await week(...words), told.join(" "), out]).toEqual([code, expect.stringContaining(sentence), []]);
});

it("[D44] a meal that is not there, and a mistake in the file, are told with their place", async () => {
  const file = join(folder, "w.yaml");
  writeFileSync(file, "week: W\neaters: 2\ndays:\n  monday: [nowhere]\n");
  expect([await week(file), told.pop()]).toEqual([
    1,
    expect.stringContaining("On monday: There is no meal called nowhere."),
  ]);
  writeFileSync(file, "week: W\neaters: many\ndays:\n  monday: [a]\n");
  expect([await week(file), told.pop()]).toEqual([1, expect.stringContaining("weeks/w.yaml, line 2:")]);
});
