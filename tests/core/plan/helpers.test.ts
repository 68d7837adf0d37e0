import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Helper } from "../../../core/plan/worker.ts";
import type { Entry, HelperAt, PlanInput, Progress } from "../../../core/plan/model.ts";
import { helpers } from "../../../core/plan/worker.ts";
import { taskId } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import { between } from "../../../core/units/quantity.ts";
import { faultsOf } from "./check-sheet.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import {
  after,
  at,
  burner,
  dish,
  evening,
  handsOff,
  handsOn,
  harvestSupper,
  mins,
  stirEvery,
} from "./small-meals.ts";
import { cook } from "./virtual-cook.ts";

const there = (count: number): readonly HelperAt[] =>
  helpers.slice(0, count).map((helper) => ({ helper, inHand: null }));
const serving = fc.constantFrom(null, at(60), at(150), at(400));
const count = fc.constantFrom(1, 2);

const chopping = (...minutes: readonly number[]) =>
  minutes.map((long, index) => dish(`salad-${index + 1}`, [handsOn("chop", mins(long))]));
const entry = (input: PlanInput, id: string): Entry => {
  const found = plan(input).entries.find((one) => one.task === taskId(id));
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};
const takes = (input: PlanInput): number => between(input.now, plan(input).readyAt) / 60;

describe("two or three cooks", () => {
  it("[P160] get sheets that an independent check finds nothing wrong with", () => {
    fc.assert(
      fc.property(madeUpMeal, serving, count, (dishes, serveAt, more) => {
        const input = evening(dishes, { serveAt, helpers: there(more) });
        expect(faultsOf(input, plan(input))).toEqual([]);
      }),
      { numRuns: 30, seed: 61 },
    );
  }, 120_000);

  it("[P161] can cook any meal to its end by its sheets, each of them right at its minute", () => {
    fc.assert(
      fc.property(madeUpMeal, serving, count, fc.constantFrom(0.8, 1.3), (dishes, serveAt, more, pace) => {
        const input = evening(dishes, { serveAt, helpers: there(more) });
        const { sheets, isFinished } = cook(input, (task) => (task.length % 2 === 0 ? pace : 1));
        expect(isFinished).toBe(true);
        expect(sheets.flatMap((one) => faultsOf(one.input, one.sheet))).toEqual([]);
      }),
      { numRuns: 4, seed: 62 },
    );
  }, 120_000);

  it("[P162] share work that is all by hand, as long as there is some for each of them", () => {
    const dishes = chopping(10, 10, 10, 10, 10, 10);
    expect([0, 1, 2].map((more) => takes(evening(dishes, { helpers: there(more) })))).toEqual([60, 30, 20]);
  });

  it("[P162] are of no use where one thing must come after the other", () => {
    const soup = [
      dish("soup", [handsOn("chop", mins(10)), handsOn("stir", mins(10), { after: [after("chop")] })]),
    ];
    expect(takes(evening(soup, { helpers: there(2) }))).toBe(20);
  });

  it("[P163] each do one thing at a time: the cook what comes first, the helpers the rest", () => {
    const input = evening(chopping(10, 10, 10), { helpers: there(2) });
    const lanes = input.tasks.map(({ id }) => entry(input, id).lanes[0]);
    expect(lanes).toEqual(["cook", "helper", "second helper"]);
  });

  it("[P164] keep what they have begun, whoever is free first", () => {
    const input = evening(chopping(10, 10, 10), { helpers: there(1) });
    const [first, second, third] = input.tasks.map(({ id }) => id);
    if (first === undefined || second === undefined || third === undefined) throw new Error("three dishes");
    const running = { state: "running", startedAt: at(0), span: mins(10) } as const;
    const begun: PlanInput = {
      ...input,
      now: at(4),
      since: at(4),
      progress: new Map<typeof first, Progress>([
        [first, { state: "done", startedAt: at(0), at: at(4) }],
        [second, running],
        [third, running],
      ]),
      handed: new Map<typeof first, Helper>([
        [first, "helper"],
        [second, "helper"],
      ]),
      focus: third,
      helpers: [{ helper: "helper", inHand: { task: second, calledAt: at(0) } }],
    };
    expect([first, second, third].map((id) => entry(begun, id).lanes)).toEqual([
      ["helper"],
      ["helper"],
      ["cook"],
    ]);
    expect(faultsOf(begun, plan(begun))).toEqual([]);
  });

  it("[P165] stir without stopping each other: a look falls to whoever has a hand free", () => {
    const pot = dish("pot", [handsOff("simmer", mins(20), { needs: [burner], attend: [stirEvery(5, 0)] })]);
    const dishes = [pot, ...chopping(25)];
    const alone = evening(dishes, { first: [taskId("pot/simmer")] });
    const both = { ...alone, helpers: there(1) };
    expect(faultsOf(both, plan(both))).toEqual([]);
    expect(takes(both)).toBeLessThanOrEqual(takes(alone));
  });

  it("[P166] are ready no later than one alone, for the meal of the examples", () => {
    const [one, two, three] = [0, 1, 2].map((more) =>
      takes(evening(harvestSupper, { helpers: there(more) })),
    );
    expect(two).toBeLessThanOrEqual(one ?? 0);
    expect(three).toBeLessThanOrEqual(two ?? 0);
  });
});
