/**
 * Evenings cooked by their sheets, each step as long as chance will have it, with a new plan every minute and after all
 * that happens: how often dinner is in time when the cook begins a tenth of its length early, how often the order of
 * the cook's work changes, and how long a new plan takes.
 * Run: npx tsx tests/bench/evenings.bench.ts [--evenings 40]
 */
import { parseArgs } from "node:util";
import { Chance } from "../../core/plan/engine/chance.ts";
import type { PlanInput, RunSheet } from "../../core/plan/model.ts";
import { plan } from "../../core/plan/plan.ts";
import { expandTasks } from "../../core/plan/tasks.ts";
import { coldStart, inBestWays } from "../../core/plan/ways.ts";
import { cookingMeal } from "../../core/recipe/scale.ts";
import { instant } from "../../core/units/quantity.ts";
import { loadPantry } from "../../server/pantry/load-pantry.ts";
import { atMeanPace, aTenthEarly, pacesOf } from "../core/plan/chance-evening.ts";
import { five } from "../core/plan/small-meals.ts";
import { cook } from "../core/plan/virtual-cook.ts";
import { median, percent, print, printFigure, printMachine, quantile, timed } from "./figures.ts";

/** What the caller does not call late, it is not. */
const MINUTE_MS = 60_000;

const handsOnOrder = (sheet: RunSheet, { tasks, progress }: PlanInput): readonly string[] => {
  const open = new Set<string>(
    tasks
      .filter((task) => task.step.hands === "on" && (progress.get(task.id)?.state ?? "waiting") === "waiting")
      .map((task) => task.id),
  );
  return sheet.entries.map((entry) => entry.task).filter((id) => open.has(id));
};

/** Pairs of the cook's tasks that change places from one sheet to the next, and all pairs. */
function swaps(before: readonly string[], after: readonly string[]): readonly [number, number] {
  const both = before.filter((id) => after.includes(id));
  const place = new Map(after.map((id, index) => [id, index]));
  let turned = 0;
  both.forEach((one, index) => {
    for (const other of both.slice(index + 1))
      if ((place.get(one) ?? 0) > (place.get(other) ?? 0)) turned += 1;
  });
  return [turned, (both.length * (both.length - 1)) / 2];
}

/** Cooks a meal on so many evenings; prints what came of it. */
function measure(name: string, input: PlanInput, evenings: number): readonly [number, number] {
  const lengthMs = plan(input).readyAt - input.now;
  const serveAt = aTenthEarly(input);
  const chance = new Chance(1);
  let inTime = 0;
  let [turned, pairs] = [0, 0];
  const ends: number[] = [];
  for (let evening = 0; evening < evenings; evening += 1) {
    const pace = pacesOf(input.tasks, chance);
    const { sheets, endedAt } = cook({ ...input, serveAt }, (task) => pace.get(task) ?? 1);
    if (endedAt < serveAt + MINUTE_MS) inTime += 1;
    ends.push((endedAt - input.now) / lengthMs);
    const orders = sheets.map((one) => handsOnOrder(one.sheet, one.input));
    orders.slice(1).forEach((order, index) => {
      const [more, of] = swaps(orders[index] ?? [], order);
      turned += more;
      pairs += of;
    });
  }
  printFigure(
    `${name}, in time`,
    `${percent(inTime, evenings)}, 95 % by ${quantile(ends, 0.95).toFixed(3)} of its length`,
    "95 %",
    inTime >= 0.95 * evenings,
  );
  printFigure(`${name}, order changed`, percent(turned, pairs), "2 %", turned <= 0.02 * pairs);
  return [inTime, evenings];
}

/** How long a plan takes when something has just happened, and a minute later. */
async function measureTime(name: string, input: PlanInput): Promise<void> {
  const serveAt = instant(input.now + MINUTE_MS);
  const [fresh, later]: [number[], number[]] = [[], []];
  for (let run = 0; run < 25; run += 1) {
    const again = { ...input, serveAt, progress: new Map(input.progress) };
    fresh.push((await timed(() => plan(again))).ms);
    later.push((await timed(() => plan({ ...again, now: instant(input.now + MINUTE_MS) }))).ms);
  }
  print(
    `${name}, late: a plan after an event ${median(fresh).toFixed(1)} ms, a minute on ${median(later).toFixed(1)} ms`,
  );
}

const { values } = parseArgs({ options: { evenings: { type: "string", default: "40" } } });
printMachine();
const pantry = await loadPantry("recipes");
for (const meal of pantry.meals) {
  const made = cookingMeal(meal, pantry.dishes);
  if (!made.ok) throw new Error(made.error);
  const inWays = inBestWays(made.value, null, five);
  const input = { ...coldStart(inWays, null, five), tasks: expandTasks(inWays) };
  measure(meal.name, { ...input, tasks: atMeanPace(input.tasks) }, Number(values.evenings));
  measure(`${meal.name}, pace not known`, input, Number(values.evenings));
  await measureTime(meal.name, input);
}
