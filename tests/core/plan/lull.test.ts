import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lullWork } from "../../../core/plan/lull-work.ts";
import type { PlanInput, RunSheet, TaskId } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import { compareCosts, sheetCost } from "../../../core/plan/sheet-cost.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { coldStart } from "../../../core/plan/ways.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { loadPantry } from "../../../server/pantry/load-pantry.ts";
import { faultsOf } from "./check-sheet.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import { after, at, burner, dish, evening, five, handsOff, handsOn, mins } from "./small-meals.ts";
import { cook } from "./virtual-cook.ts";

const tableOf = ({ serveAt }: PlanInput, { readyAt }: RunSheet): number =>
  Math.max(readyAt, serveAt ?? readyAt);

/** How many minutes of work by hand lie in the last so many before the table, read off the sheet alone. */
function byHand(input: PlanInput, sheet: RunSheet, last: number): number {
  const from = tableOf(input, sheet) - last * 60_000;
  return sheet.entries.reduce((sum, { task, start, end }) => {
    const isOn = input.tasks.find(({ id }) => id === task)?.step.hands === "on";
    return isOn ? sum + Math.max(0, end - Math.max(start, from)) / 60_000 : sum;
  }, 0);
}

const wished = (input: PlanInput, last: number): PlanInput => ({ ...input, lull: minutes(last) });

/** What of a cost comes before the wish: the time of the cook's hands does not. */
const graver = (input: PlanInput, sheet: RunSheet) => ({ ...sheetCost(input, sheet), hands: 0 });

const ids = (tasks: readonly { readonly id: TaskId }[]): readonly string[] => tasks.map(({ id }) => id);

/** A roast of an hour, and a salad whose leaves keep half an hour once they are cut. */
const roastAndLeaves = [
  dish("roast", [handsOff("roast", mins(60), { needs: [burner], hold: minutes(20) })]),
  dish("salad", [handsOn("cut", mins(8), { hold: minutes(30) })]),
];

describe("a lull before serving", () => {
  // Ten minutes' slack are kept where there is time for them, so that the leaves end ten minutes before the table; then
  // all of their eight minutes lie in the last twenty. Worked out by hand.
  it("[P130] work by hand that could be over before is planned so", () => {
    const input = evening(roastAndLeaves, { serveAt: at(90) });
    const before = plan(input);
    const sheet = plan(wished(input, 20));
    expect(byHand(input, before, 20)).toBe(8);
    expect(byHand(input, sheet, 20)).toBe(0);
    expect(lullWork(wished(input, 20), sheet)).toEqual({ bound: [], crowded: [] });
    expect(sheet.late).toBe(0);
  });

  it("[P132] what its recipe binds to serving stays, with what is wanted right after it; both are told", () => {
    const input = evening(
      [
        ...roastAndLeaves,
        dish("slaw", [
          handsOn("dress", mins(3), { endsBeforeServing: minutes(5) }),
          handsOn("scatter", mins(1), { after: [after("dress", 0, 1)] }),
        ]),
      ],
      { serveAt: at(90), lull: minutes(10) },
    );
    const sheet = plan(input);
    const { bound, crowded } = lullWork(input, sheet);
    expect([ids(bound), ids(crowded)]).toEqual([["slaw/dress", "slaw/scatter"], []]);
    expect(byHand(input, sheet, 10)).toBe(4);
    expect(faultsOf(input, sheet)).toEqual([]);
  });

  it("[P132] what has no time before is told as such, and dinner is no later for it", () => {
    const input = evening([
      dish("pan", [
        handsOff("simmer", mins(30), { needs: [burner] }),
        handsOn("mash", mins(12), { after: [after("simmer")] }),
      ]),
    ]);
    const sheet = plan(wished(input, 10));
    expect(sheet.readyAt).toBe(plan(input).readyAt);
    expect(ids(lullWork(wished(input, 10), sheet).crowded)).toEqual(["pan/mash"]);
  });

  it("[P132] what has begun is the cook's already: it is moved no more, and not told", () => {
    const input = evening(roastAndLeaves, { serveAt: at(90), now: at(82), lull: minutes(10) });
    const [roast, cut] = input.tasks;
    if (roast === undefined || cut === undefined) throw new Error("no such tasks");
    const progress: PlanInput["progress"] = new Map([
      [roast.id, { state: "done", startedAt: five, at: at(80) }],
      [cut.id, { state: "running", startedAt: at(80), span: mins(8) }],
    ]);
    const sheet = plan({ ...input, progress });
    expect(sheet.entries.find(({ task }) => task === cut.id)?.start).toBe(at(80));
    expect(lullWork({ ...input, progress }, sheet)).toEqual({ bound: [], crowded: [] });
  });
});

describe("any made-up meal", () => {
  const slack = fc.constantFrom(null, 0, 15, 60);
  const servedAt = (input: PlanInput, more: number | null): Instant | null =>
    more === null ? null : plus(plan(input).readyAt, minutes(more));

  it("[P131] a lull never makes dinner later, misses no more of a hard limit and lets nothing hot wait longer", () => {
    fc.assert(
      fc.property(madeUpMeal, slack, fc.constantFrom(5, 10, 30), (dishes, more, last) => {
        const input = evening(dishes, { serveAt: servedAt(evening(dishes), more) });
        const calm = wished(input, last);
        const sheet = plan(calm);
        expect(compareCosts(graver(calm, sheet), graver(input, plan(input)))).toBeLessThanOrEqual(0);
        expect(faultsOf(calm, sheet)).toEqual([]);
      }),
      { numRuns: 30, seed: 4 },
    );
  }, 120_000);

  it("[P133] is cooked to the end with a lull, each sheet right at its minute", () => {
    fc.assert(
      fc.property(madeUpMeal, (dishes) => {
        const serveAt = servedAt(evening(dishes), 15);
        const { sheets, isFinished } = cook(evening(dishes, { serveAt, lull: minutes(10) }));
        expect(isFinished).toBe(true);
        expect(sheets.flatMap((one) => faultsOf(one.input, one.sheet))).toEqual([]);
      }),
      { numRuns: 3, seed: 9 },
    );
  }, 120_000);
});

describe("the meals that ship", async () => {
  const pantry = await loadPantry("recipes");
  const meals = pantry.meals.flatMap((meal) => {
    const made = cookingMeal(meal, pantry.dishes);
    return made.ok ? [made.value] : [];
  });
  const inputs = meals.flatMap((meal) => {
    const cold = { ...coldStart(meal, null, five), tasks: expandTasks(meal) };
    const soonest = plan(cold).readyAt;
    return [0, 10, 40].map((more): PlanInput => ({ ...cold, serveAt: plus(soonest, minutes(more)) }));
  });

  // In the last half hour a plan with slack has as little to do already as the recipes allow.
  it.each([
    [10, 5],
    [15, 5],
    [30, 0],
  ])(
    "[P130] in the last %i minutes at least %i minutes less are to do by hand over all, and dinner is no later",
    (last, less) => {
      const pairs = inputs.map((input) => {
        const [before, sheet] = [plan(input), plan(wished(input, last))];
        expect(faultsOf(wished(input, last), sheet)).toEqual([]);
        expect(compareCosts(graver(input, sheet), graver(input, before))).toBeLessThanOrEqual(0);
        return [byHand(input, before, last), byHand(input, sheet, last)] as const;
      });
      const sum = (which: 0 | 1): number => pairs.reduce((all, pair) => all + pair[which], 0);
      expect(pairs.filter(([before, now]) => now > before + 0.1)).toEqual([]);
      expect(sum(1)).toBeLessThanOrEqual(sum(0) - less);
    },
  );

  it("[P133] the welcome supper is cooked to the end in its time", () => {
    const [input] = inputs.filter(({ meal }) => meal.name === "Welcome Supper").slice(1);
    if (input === undefined) throw new Error("no welcome supper");
    const { sheets, isFinished, endedAt } = cook(wished(input, 10));
    expect(isFinished).toBe(true);
    expect(sheets.flatMap((one) => faultsOf(one.input, one.sheet))).toEqual([]);
    expect(endedAt).toBeLessThanOrEqual((input.serveAt ?? five) + 60_000);
  }, 60_000);
});
