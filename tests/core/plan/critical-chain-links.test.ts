import fc from "fast-check";
import { expect, it } from "vitest";
import type { Binding } from "../../../core/plan/critical-chain.ts";
import { bindingsOf, boundBy, criticalChain } from "../../../core/plan/critical-chain.ts";
import type { PlanInput, RunSheet, Task, TaskId } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import { at, evening } from "./small-meals.ts";

const openEntries = (input: PlanInput, sheet: RunSheet) =>
  sheet.entries.filter(({ task }) => input.progress.get(task)?.state !== "done");

/** The moment that a reason for `id` speaks of, worked out anew from the tasks that it names. */
function reasonEnds(input: PlanInput, sheet: RunSheet, id: TaskId, binding: Binding): number {
  const entry = sheet.entries.find(({ task }) => task === boundBy(binding));
  const other = input.tasks.find((task) => task.id === boundBy(binding));
  const mine = input.tasks.find((task) => task.id === id);
  if (entry === undefined || other === undefined || mine === undefined) return binding.from;
  const length = (task: Task) => Math.round((task.step.time.low + task.step.time.high) / 2) * 1000;
  switch (binding.kind) {
    case "after":
      return entry.end + (mine.after.find((link) => link.task === other.id)?.atLeast ?? NaN) * 1000;
    case "hands":
      return other.step.hands === "on" ? entry.end : Math.min(entry.end, entry.start + 60_000);
    case "thing":
    case "rack":
      return entry.end;
    case "soon":
      return (
        entry.start - (other.after.find((link) => link.task === id)?.atMost ?? NaN) * 1000 - length(mine)
      );
    case "hot":
      return entry.start - (mine.step.hold ?? NaN) * 1000 - length(mine);
    case "heat": {
      const move = sheet.ovenMoves.find((turn) => turn.for.includes(id));
      return entry.end + (move === undefined ? NaN : move.readyAt - move.at);
    }
    case "fresh":
    case "ahead":
    case "wish":
    case "now":
    case "begun":
    case "free":
      return binding.from;
  }
}

it("[P81] ends when dinner is ready, and its reasons leave no gap, whatever the meal", () => {
  const serving = fc.constantFrom(null, at(-30), at(60), at(400));
  fc.assert(
    fc.property(madeUpMeal, serving, (dishes, serveAt) => {
      const input = evening(dishes, { serveAt });
      const sheet = plan(input);
      const bindings = bindingsOf(input, sheet);
      expect([...bindings.keys()].sort()).toEqual(
        openEntries(input, sheet)
          .map(({ task }) => task)
          .sort(),
      );
      const chain = criticalChain(input, sheet);
      const links = sheet.entries.filter(({ task }) => chain.includes(task));
      expect(links.map(({ task }) => task)).toEqual(chain);
      expect(Math.max(...links.map(({ end }) => end))).toBe(sheet.readyAt);
      for (const { task, start } of links) {
        const binding = bindings.get(task);
        if (binding === undefined || binding.kind === "free") continue;
        expect(Math.abs(start - reasonEnds(input, sheet, task, binding))).toBeLessThan(60_000);
        const next = boundBy(binding);
        if (next !== null) expect(chain).toContain(next);
      }
    }),
    { numRuns: 40, seed: 3 },
  );
}, 120_000);
