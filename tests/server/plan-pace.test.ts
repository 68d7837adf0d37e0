import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { parseEvent } from "../../core/cook/parse.ts";
import { days, plus } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import type { PlanJson } from "../../server/cli/plan-json.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { mealLogIn, openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { forked, kitchenWith, way } from "../core/plan/forked-meals.ts";
import { appliance, dish, meal, mins } from "../core/plan/small-meals.ts";
import { CookedEvenings } from "./cooked-evenings.ts";
import { five } from "./small-meal.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "plan-pace-"));
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

function open(): SqliteMealStore {
  const database = openMealDatabase(folder);
  if (!database.ok) throw new Error(database.error.code);
  return new SqliteMealStore(database.value, parseEvent);
}

/** Six evenings on which chopping took so many minutes, where the recipe has five. */
function sixEvenings(chopping: number): void {
  const store = open();
  const evenings = new CookedEvenings(store);
  for (const day of [0, 1, 2, 3, 4, 5]) evenings.cook(day, chopping);
  store.close();
}

const plan = (...words: readonly string[]): Promise<number> =>
  runCli(["plan", "welcome-supper", "--data", folder, ...words], [planCommand]);

async function planned(...words: readonly string[]): Promise<PlanJson> {
  out = [];
  expect(await plan(...words, "--json")).toBe(0);
  return JSON.parse(out[0] ?? "") as PlanJson;
}

const shredding = ({ steps }: PlanJson): number => {
  const step = steps.find((one) => one.step === "shred-the-cabbage");
  return step === undefined ? 0 : step.end - step.start;
};

describe("plan, where the meal log knows the cook's pace", () => {
  it("[P136] reckons with it, and says so in one line", async () => {
    // exp(ln 1.5 * 6 / 11) = 1.25: the credibility of six steps, worked out by hand.
    sixEvenings(7.5);
    expect([await plan(), told]).toEqual([0, []]);
    const text = out.join(" ").replaceAll(/\s+/g, " ");
    expect(text).toContain(
      "Reckoned with your own pace, as a multiple of the recipes' times: cutting and peeling 1.25.",
    );
    const own = await planned();
    const written = await planned("--as-written");
    expect(own.paces).toEqual([{ kind: "cutting", times: 1.25 }]);
    expect(shredding(own)).toBeCloseTo(shredding(written) * 1.25, 1);
    expect(own.elapsedMin).toBeGreaterThan(written.elapsedMin);
  });

  it("[P136] --as-written reckons with the recipes' times, and so does a plan where nothing is known", async () => {
    const nothing = await planned();
    sixEvenings(7.5);
    expect(await planned("--as-written")).toEqual(nothing);
    expect(nothing.paces).toEqual([]);
    out = [];
    await plan("--as-written");
    expect(out.join(" ")).not.toContain("Reckoned with");
  });

  it("[P136] a log that cannot be read is told in one sentence, and the plan is made all the same", async () => {
    const nothing = await planned();
    writeFileSync(mealLogIn(folder), "no database, but a shopping list");
    expect(await planned()).toEqual(nothing);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/ So this is planned as the recipes say\.$/);
  });
});

describe("ways of a step, as a meal begins", () => {
  const byHand = way("by hand", { hands: "on", time: mins(6) });
  const machine = way("in the blender", { time: mins(8), needs: [appliance("blender")] });
  const herbs = meal([dish("herbs", [forked("chop-the-herbs", [byHand, machine])])], kitchenWith({}));

  function takenOnDaySeven(): string | undefined {
    const store = open();
    const now = () => plus(five, days(7));
    const kitchen = Kitchen.open({ store, meal: () => ok(herbs), now, newId: () => "seven" });
    if (!kitchen.ok) throw new Error(kitchen.error.code);
    kitchen.value.begin({ id: "begin", meal: "herbs", servings: {}, serveAt: null });
    const { events } = kitchen.value.snapshot();
    store.close();
    return appendEvents(emptyLog, events).session?.meal.dishes[0]?.steps[0]?.ways?.taken;
  }

  it("[P137] are chosen by the recipes' times where the cook is not known", () => {
    expect(takenOnDaySeven()).toBe("by hand");
  });

  it("[P137] are chosen at the cook's own pace: six minutes by hand are eleven for who chops slowly", () => {
    // exp(ln 3 * 6 / 11) = 1.82, so 10.9 minutes against eight in the blender.
    sixEvenings(15);
    expect(takenOnDaySeven()).toBe("in the blender");
  });
});
