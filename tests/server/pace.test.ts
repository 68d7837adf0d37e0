import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { parseEvent } from "../../core/cook/parse.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { Session } from "../../core/cook/session.ts";
import type { Snapshot } from "../../core/sync/protocol.ts";
import { between, days, inMinutes, plus } from "../../core/units/quantity.ts";
import { knownPaces, pacesFor } from "../../core/pace/known-paces.ts";
import type { KnownPace } from "../../core/pace/pace.ts";
import { inProgram } from "../../server/cli/in-program.ts";
import { paceCommand } from "../../server/cli/pace.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { MealBook, takesMinutes } from "../../server/kitchen/meal-book.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { CookedEvenings } from "./cooked-evenings.ts";
import { chop, five, simmer, smallMeal } from "./small-meal.ts";

let folder = "";
let store: SqliteMealStore;
let evenings: CookedEvenings;
let out: string[] = [];
let told: string[] = [];

function open(): SqliteMealStore {
  const database = openMealDatabase(folder);
  if (!database.ok) throw new Error(database.error.code);
  return new SqliteMealStore(database.value, parseEvent);
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "pace-"));
  store = open();
  evenings = new CookedEvenings(store);
  [out, told] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const pace = (...words: readonly string[]): Promise<number> => runCli(["pace", ...words], [paceCommand]);

function sessionOf({ events }: Snapshot): Session {
  const { session } = appendEvents(emptyLog, events);
  if (session === null) throw new Error("no meal has begun");
  return session;
}

/** How long a step is planned to take as soon as the meal has begun, in minutes. */
function planned(snapshot: Snapshot, task: typeof chop): number {
  const session = sessionOf(snapshot);
  const entry = runSheetOf(session, session.begunAt).entries.find((one) => one.task === task);
  return entry === undefined ? 0 : inMinutes(between(entry.start, entry.end));
}

/** Six evenings on which the leeks took half as long again: exp(ln 1.5 * 6 / 11) = 1.25. */
function sixSlowEvenings(): void {
  for (const day of [0, 1, 2, 3, 4, 5]) evenings.cook(day, 7.5);
}

describe("an evening begins with what the evenings before have taught", () => {
  it("[P93] the first two evenings are planned as the recipes say, the seventh at the cook's pace", () => {
    evenings.cook(0, 7.5);
    expect(planned(evenings.begin(1), chop)).toBe(5);
    evenings.give({ type: "EndMeal" });
    for (const day of [2, 3, 4, 5, 6]) evenings.cook(day, 7.5);
    const seventh = evenings.begin(7);
    expect([planned(seventh, chop), planned(seventh, simmer)]).toEqual([6.25, 22.5]);
  });

  it("[L50] every device that reads the log plans alike, also after the server was started again", () => {
    sixSlowEvenings();
    const begun = evenings.begin(7);
    const again = new CookedEvenings(store).kitchen.snapshot();
    expect(again.events).toEqual(begun.events);
    const at = sessionOf(begun).begunAt;
    expect(runSheetOf(sessionOf(again), at)).toEqual(runSheetOf(sessionOf(begun), at));
  });

  it("[P95] what the cook has set lasts from evening to evening, and what was forgotten stays so", () => {
    sixSlowEvenings();
    evenings.cook(6, 7.5, { type: "SetPace", kind: "cutting", wish: "faster" });
    expect(planned(evenings.begin(7), chop)).toBe(4.25);
    evenings.give({ type: "ForgetPace" });
    evenings.give({ type: "EndMeal" });
    expect(planned(evenings.begin(8), chop)).toBe(5);
  });

  it("[L55] an evening that cannot be read teaches nothing and keeps no meal off the stove", () => {
    sixSlowEvenings();
    const isOfDayTwo = (at: number): boolean => at >= plus(five, days(2)) && at < plus(five, days(3));
    const database = openMealDatabase(folder);
    if (!database.ok) throw new Error(database.error.code);
    const careful = new SqliteMealStore(database.value, (value) => {
      const event = parseEvent(value);
      return event.ok && isOfDayTwo(event.value.at) ? { ok: false, error: "it is torn" } : event;
    });
    expect(new CookedEvenings(careful).kitchen.pacesFor(smallMeal)).toContainEqual({
      kind: "cutting",
      times: 1.22,
      steps: 5,
      evenings: 5,
      wish: null,
      of: ["leek-soup/chop"],
    });
    careful.close();
  });

  it("[P98] a meal's card says how long it takes at the cook's pace", async () => {
    sixSlowEvenings();
    // 5 + 22.5 + 2 minutes, and 6.25 + 22.5 + 2.
    expect(takesMinutes(smallMeal)).toBe(30);
    expect(takesMinutes(smallMeal, (meal) => evenings.kitchen.pacesFor(meal))).toBe(31);
    const book = await MealBook.open(inProgram("recipes"));
    const slow: readonly KnownPace[] = knownPaces([], null).map((pace) => ({ ...pace, wish: "slower" }));
    const cards = (await book.list((meal) => pacesFor(meal, slow))).meals;
    const written = (await book.list()).meals;
    expect(cards.map(({ takesMinutes: slower }, at) => slower > (written[at]?.takesMinutes ?? 0))).toEqual(
      written.map(() => true),
    );
  });
});

describe("pace", () => {
  it("[P97] tells each kind of work, from how many steps and evenings, in lines of at most 80 letters", async () => {
    sixSlowEvenings();
    expect(await pace("--data", folder)).toBe(0);
    expect(out.slice(0, 4)).toEqual([
      "washing and cleaning    Nothing is known yet.",
      "cutting and peeling     You take 1.3 times as long as the recipes say, from 6",
      "                        steps on 6 evenings.",
      "mixing and kneading     You take about as long as the recipes say, from 6",
    ]);
    expect(out.every((line) => line.length <= 80)).toBe(true);
    expect(told).toEqual([]);
  });

  it("[P97] tells what the cook has set beside what was learnt, and that too little is known", async () => {
    evenings.cook(0, 7.5, { type: "SetPace", kind: "cutting", wish: "slower" });
    await pace("--data", folder);
    expect(out.join(" ").replaceAll(/\s+/g, " ")).toContain(
      "cutting and peeling Too little is known yet: one step on one evening. Planned 1.3 times as long as the recipes say.",
    );
  });

  it("[P97] --json prints one object", async () => {
    sixSlowEvenings();
    expect(await pace("--data", folder, "--json")).toBe(0);
    const { paces } = JSON.parse(out.join("\n")) as { readonly paces: readonly unknown[] };
    expect(paces).toHaveLength(7);
    expect(paces[1]).toEqual({
      kind: "cutting",
      planned: 1.25,
      learnt: 1.25,
      wish: null,
      steps: 6,
      evenings: 6,
    });
    expect(out).toHaveLength(1);
  });

  it("[P97] --forget forgets all until now, also for a server that runs; the evenings stay", async () => {
    sixSlowEvenings();
    vi.useFakeTimers({ now: plus(five, days(6)), toFake: ["Date"] });
    expect(await pace("--data", folder, "--forget")).toBe(0);
    expect(told).toEqual(["Forgotten. From the next meal on everything is planned as the recipes say."]);
    expect(out).toHaveLength(7);
    expect(out.every((line) => line.endsWith("Nothing is known yet."))).toBe(true);
    expect(planned(evenings.begin(7), chop)).toBe(5);
    expect(store.past(9)).toMatchObject({ value: { length: 6 } });
  });

  it("[P97] what cannot be is told in one sentence", async () => {
    const nowhere = join(folder, "nowhere");
    expect(await pace("--data", nowhere)).toBe(1);
    expect(await pace("chopping")).toBe(2);
    expect(await pace("--slower")).toBe(2);
    expect(told).toEqual([
      `There is no meal log in ${nowhere}. Cook a meal first, or name its folder after --data.`,
      'pace takes no file; "chopping" is one word too many.',
      "There is no option --slower.",
    ]);
    expect(out).toEqual([]);
  });
});
