import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draftsOf } from "../../../core/plan/drafts.ts";
import { candidate, gentler, soonest } from "../../../core/plan/improve.ts";
import { judge } from "../../../core/plan/judge.ts";
import { settled } from "../../../core/plan/limits.ts";
import { problemOf } from "../../../core/plan/problem.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import { evening } from "./small-meals.ts";

const soon = { serveAt: null, first: [] };

describe("a gentler plan", () => {
  const plans = fc.sample(madeUpMeal, { numRuns: 30, seed: 29 }).map((dishes) => {
    const { drafts } = draftsOf(settled(problemOf(evening(dishes))).problem);
    const order = {
      keys: drafts.problem.acts.map((_, index) => index),
      bakings: drafts.problem.acts.map(() => -1),
    };
    const before = candidate(drafts, soonest(drafts, order, soon), soon);
    return { problem: drafts.problem, before, after: gentler(drafts, before, soon) };
  });

  it("[P155] misses no more limits, is no later, and lets food wait no longer", () => {
    for (const { problem, before, after } of plans) {
      const verdict = judge(problem, after.schedule, 0);
      expect(verdict).toEqual(after.verdict);
      expect(verdict.missed).toBeLessThanOrEqual(before.verdict.missed);
      expect(verdict.ready).toBeLessThanOrEqual(before.verdict.ready);
      expect(verdict.waits).toBeLessThanOrEqual(before.verdict.waits);
    }
  });

  it("[P155] lets food wait less in some meals, and leaves a plan alone in which none waits too long", () => {
    const gained = plans.filter(({ before, after }) => after.verdict.waits < before.verdict.waits);
    expect(gained.length).toBeGreaterThan(2);
    for (const { before, after } of plans) if (before.verdict.waits === 0) expect(after).toBe(before);
  });
});
