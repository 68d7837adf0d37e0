/**
 * How long a plan takes: the first of a meal (its course is worked out too) and a re-plan in the middle of it.
 * Run: npx tsx tests/bench/plan.bench.ts
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

function middle(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
}

function cpuMs(work: () => void): number {
  const began = process.cpuUsage();
  work();
  const used = process.cpuUsage(began);
  return (used.user + used.system) / 1000;
}

function measure(dishes: number, marks: number): void {
  const input = evening(Array.from({ length: dishes }, (_, index) => tenSteps(index)));
  const runs = Array.from({ length: 15 }, () => {
    const fresh: PlanInput = { ...input, tasks: expandTasks(input.meal) };
    const first = cpuMs(() => plan(fresh));
    const again = cpuMs(() => plan({ ...fresh, now: at(1), serveAt: at(dishes * 70) }));
    const late = cpuMs(() => plan({ ...fresh, now: at(1), serveAt: at(10) }));
    return { first, again, late };
  });
  const figures = (["first", "again", "late"] as const).map((kind) =>
    middle(runs.map((run) => run[kind])).toFixed(1),
  );
  const [first, again, late] = figures;
  console.log(
    `${dishes * 10} steps: first plan ${first} ms, on-time re-plan ${again} ms, late re-plan ${late} ms of processor time (aim ${marks})`,
  );
}

measure(2, 5);
measure(6, 20);
measure(20, 100);
