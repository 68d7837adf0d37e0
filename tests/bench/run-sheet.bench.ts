/**
 * How long a plan takes: the first of a meal (its course is worked out too) and a re-plan in the middle of it.
 * Run: npx tsx tests/bench/run-sheet.bench.ts
 */
import { plan } from "../../core/plan/plan.ts";
import { expandTasks } from "../../core/plan/tasks.ts";
import type { PlanInput } from "../../core/plan/model.ts";
import type { Dish, Step } from "../../core/recipe/model.ts";
import { minutes } from "../../core/units/quantity.ts";
import {
  after,
  at,
  burner,
  dish,
  evening,
  handsOff,
  handsOn,
  mins,
  oven,
  stirEvery,
} from "../core/plan/small-meals.ts";
import { median, print, printFigure, printMachine, timed } from "./figures.ts";

/** A dish of ten steps with a pot, an oven step, a hold, a maximum lag and a stir. */
function tenSteps(index: number): Dish {
  const before = (step: number) => (step === 0 ? [] : [after(`s${step - 1}`, 0, step === 6 ? 10 : null)]);
  const steps = Array.from({ length: 10 }, (_, step): Step => {
    const more = { after: before(step) };
    if (step === 3)
      return handsOff("s3", mins(10 + index, 20), { ...more, needs: [burner], attend: [stirEvery(4, 1)] });
    if (step === 5)
      return handsOff("s5", mins(20, 30), { ...more, needs: [oven(350 + 10 * index, 400 + 10 * index)] });
    if (step === 9) return handsOn("s9", mins(2), { ...more, hold: minutes(15) });
    return handsOn(`s${step}`, mins(2, 4), more);
  });
  return dish(`dish-${index}`, steps);
}

/** As a server does that lists its meals: whatever comes first in a process is slower, and nobody waits for that. */
function warmUp(): void {
  const input = evening([tenSteps(0), tenSteps(1)]);
  for (let run = 0; run < 40; run += 1)
    plan({ ...input, tasks: expandTasks(input.meal), serveAt: at(10 * run) });
}

/**
 * @param firstMs the first answer may take so long
 * @param againMs a re-plan may; null where none is asked for
 */
async function measure(dishes: number, firstMs: number, againMs: number | null): Promise<void> {
  const input = evening(Array.from({ length: dishes }, (_, index) => tenSteps(index)));
  const firsts: number[] = [];
  const punctual: number[] = [];
  const late: number[] = [];
  for (let run = 0; run < 15; run += 1) {
    const fresh: PlanInput = { ...input, tasks: expandTasks(input.meal) };
    firsts.push((await timed(() => plan(fresh))).ms);
    punctual.push((await timed(() => plan({ ...fresh, now: at(1), serveAt: at(dishes * 70) }))).ms);
    late.push((await timed(() => plan({ ...fresh, now: at(1), serveAt: at(10) }))).ms);
  }
  const figure = (what: string, values: readonly number[], most: number | null): void => {
    const value = median(values);
    const name = `${dishes * 10} steps, ${what}`;
    if (most === null) print(`${name.padEnd(46)} ${value.toFixed(1)} ms`);
    else printFigure(name, `${value.toFixed(1)} ms`, `${most} ms`, value <= most);
  };
  figure("first plan", firsts, firstMs);
  figure("re-plan, on time", punctual, againMs);
  figure("re-plan, late", late, againMs);
}

printMachine();
print("processor time, median of 15, after 40 other plans");
warmUp();
await measure(2, 5, null);
await measure(6, 20, 60);
await measure(20, 100, null);
