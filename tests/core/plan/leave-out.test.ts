import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { whatToLeaveOut, withoutOne } from "../../../core/plan/leave-out.ts";
import type { LeftOut } from "../../../core/plan/leave-out.ts";
import type { PlanInput, Progress } from "../../../core/plan/model.ts";
import { taskId } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { minutes, seconds } from "../../../core/units/quantity.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import { at, burner, dish, evening, handsOff, handsOn, kitchen, meal, mins } from "./small-meals.ts";

/** One burner: a pot boils after the other, so dinner takes as long as all of them together. */
const narrow = { ...kitchen, burners: 1 };
const pot = (id: string, length: number): Dish =>
  dish(id, [handsOff(`boil-${id}`, mins(length), { needs: [burner] })]);
const pots = (more: Partial<PlanInput>, ...dishes: readonly Dish[]): PlanInput =>
  evening(dishes, more, narrow);
const [rice, beans, peas] = [pot("rice", 30), pot("beans", 20), pot("peas", 10)];

const outs = (input: PlanInput): readonly LeftOut[] => whatToLeaveOut(input, plan(input));
const ids = ({ dishes }: LeftOut): string => dishes.map(({ id }) => id).join(" and ");
const told = (input: PlanInput) => outs(input).map((out) => [ids(out), out.readyAt] as const);

describe("a dinner that cannot be ready in time", () => {
  it("[P110] each dish that makes it sooner is told with the time, the soonest first, counted out by hand", () => {
    // 50 minutes in all, 35 are wanted: without the rice 20, without the beans 30.
    const both = outs(pots({ serveAt: at(35) }, rice, beans));
    expect(both.map(ids).toSorted()).toEqual(["beans", "rice"]);
    for (const { late, readyAt } of both) {
      expect(late).toBe(0);
      expect(readyAt).toBeLessThanOrEqual(at(35));
    }
    const tight = outs(pots({ serveAt: at(25) }, rice, beans));
    expect(tight.map((out) => [ids(out), out.late])).toEqual([
      ["rice", 0],
      ["beans", minutes(5)],
    ]);
    expect(tight[1]?.readyAt).toBe(at(30));
  });

  it("[P110] a dish that brings nothing is not told", () => {
    // Five minutes' peeling lie beside the boiling.
    const salad = dish("salad", [handsOn("peel", mins(5))]);
    expect(outs(pots({ serveAt: at(35) }, rice, beans, salad)).map(ids)).not.toContain("salad");
    // Two that run side by side: one alone is a minute sooner, which is the cook's to set the other going.
    const beside = dish("bread", [handsOff("bake", mins(30))]);
    const cake = dish("cake", [handsOff("cool", mins(30))]);
    expect(outs(evening([beside, cake], { serveAt: at(10) })).map(ids)).toEqual([]);
  });

  it("[P111] where no one is enough the best two come first", () => {
    // 60 minutes, 15 are wanted: without rice and beans the peas' ten are left.
    const [pair, ...ones] = outs(pots({ serveAt: at(15) }, rice, beans, peas));
    expect([pair?.dishes.map(({ id }) => id), pair?.late]).toEqual([["rice", "beans"], 0]);
    expect(ones.map((out) => [ids(out), out.readyAt])).toEqual([
      ["rice", at(30)],
      ["beans", at(40)],
      ["peas", at(50)],
    ]);
    // Two of half an hour side by side: one of them alone brings no more than a minute, both leave the peas' ten.
    const bread = dish("bread", [handsOff("rise", mins(31))]);
    const cream = dish("cream", [handsOff("cool", mins(31))]);
    expect(outs(evening([bread, peas, cream], { serveAt: at(15) })).map(ids)).toEqual(["bread and cream"]);
  });

  it("[P111] two dishes are never both left out of two", () => {
    expect(told(pots({ serveAt: at(5) }, rice, beans))).toEqual([
      ["rice", at(20)],
      ["beans", at(30)],
    ]);
  });

  it("[P112] the only dish is not left out, nor one that has begun or is done; a called one may be", () => {
    expect(told(pots({ serveAt: at(10) }, rice))).toEqual([]);
    const boil = taskId("rice/boil-rice");
    const running: Progress = { state: "running", startedAt: at(0), span: mins(30) };
    const states: readonly Partial<PlanInput>[] = [
      { progress: new Map([[boil, running]]) },
      { progress: new Map([[boil, { state: "done", startedAt: at(0), at: at(1) }]]) },
      { progress: new Map([[boil, { state: "skipped", at: at(1) }]]) },
    ];
    for (const state of states) {
      const names = outs(pots({ serveAt: at(5), now: at(1), ...state }, rice, beans)).map(ids);
      expect(names.join()).not.toContain("rice");
    }
    const begun = pots({ serveAt: at(5), now: at(1), progress: new Map([[boil, running]]) }, rice, beans);
    expect(told(begun)).toEqual([["beans", at(30)]]);
    expect(told(pots({ serveAt: at(25), focus: boil }, rice, beans)).map(([name]) => name)).toEqual([
      "rice",
      "beans",
    ]);
  });

  it("[P113] in time, for no time, or late by less than a minute nothing is told and nothing planned", () => {
    const never = () => {
      throw new Error("nothing is to be planned");
    };
    for (const serveAt of [null, at(90)]) {
      const input = pots({ serveAt }, rice, beans);
      expect(whatToLeaveOut(input, plan(input), never)).toEqual([]);
      expect(withoutOne(input, plan(input), never)).toEqual([]);
    }
    const input = pots({ serveAt: at(35) }, rice, beans);
    expect(whatToLeaveOut(input, { ...plan(input), late: seconds(59) }, never)).toEqual([]);
  });

  it("[P114] no more is planned than each dish, and two of the eight that bring the most", () => {
    const counted = (count: number): number => {
      let plans = 0;
      const dishes = Array.from({ length: count }, (_, index) => pot(`pot-${index + 1}`, 10 + index));
      const input = pots({ serveAt: at(1) }, ...dishes);
      const some = whatToLeaveOut(input, plan(input), (one) => {
        plans += 1;
        return plan(one);
      });
      expect(some.map(ids)[0]).toBe(`pot-${count - 1} and pot-${count}`);
      return plans;
    };
    expect([counted(4), counted(8), counted(10)]).toEqual([4 + 6, 36, 10 + 28]);
    const input = pots({ serveAt: at(25) }, rice, beans, peas);
    expect(outs(input)).toEqual(outs(input));
  });
});

describe("any meal that is late", () => {
  /** The evening without them, built anew. */
  const anew = (dishes: readonly Dish[], out: LeftOut, input: PlanInput): PlanInput => {
    const left = dishes.filter((one) => out.dishes.every(({ id }) => id !== one.id));
    const tasks = expandTasks(meal(left));
    const progress = new Map([...input.progress].filter(([id]) => tasks.some((task) => task.id === id)));
    return { ...evening(left, { serveAt: input.serveAt, now: input.now }), tasks, progress };
  };

  it("[P110] what is promised is what a plan without the dish gives", () => {
    let offers = 0;
    fc.assert(
      fc.property(madeUpMeal, fc.constantFrom(at(20), at(50), at(80)), (dishes, serveAt) => {
        const input = evening(dishes, { serveAt });
        const sheet = plan(input);
        const some = whatToLeaveOut(input, sheet);
        offers += some.length;
        for (const out of some) {
          const then = plan(anew(dishes, out, input));
          expect([out.readyAt, out.late]).toEqual([then.readyAt, then.late]);
          expect(sheet.readyAt - out.readyAt).toBeGreaterThanOrEqual(out.late < 60 ? 1 : 120_000);
        }
        const times = some.map(({ readyAt }) => readyAt);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        if (some.some(({ dishes: two }) => two.length === 2))
          for (const one of some.slice(1)) expect(one.late).toBeGreaterThanOrEqual(60);
        if (sheet.late === 0) expect(some).toEqual([]);
      }),
      { numRuns: 15, seed: 3 },
    );
    expect(offers).toBeGreaterThan(15);
  }, 120_000);

  it("[P112] a dish of which something has begun is never offered, and the promise holds in mid-meal", () => {
    fc.assert(
      fc.property(madeUpMeal, fc.nat(5), fc.boolean(), (dishes, which, isDone) => {
        const begun = dishes[which % dishes.length];
        const now = at(5);
        const own = expandTasks(meal(dishes)).find((task) => task.dish.id === begun?.id);
        if (own === undefined) throw new Error("every dish has a task");
        const state: Progress = isDone
          ? { state: "done", startedAt: at(0), at: at(4) }
          : { state: "running", startedAt: at(0), span: own.step.time };
        const input = evening(dishes, { serveAt: at(20), now, progress: new Map([[own.id, state]]) });
        const some = whatToLeaveOut(input, plan(input));
        expect(some.flatMap((out) => out.dishes).map(({ id }) => id)).not.toContain(own.dish.id);
        for (const out of some) expect(out.readyAt).toBe(plan(anew(dishes, out, input)).readyAt);
      }),
      { numRuns: 10, seed: 4 },
    );
  }, 120_000);
});
