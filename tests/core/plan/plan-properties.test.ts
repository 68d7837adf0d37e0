import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/plan.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import type { PlanInput, RunSheet } from "../../../core/plan/model.ts";
import { instant } from "../../../core/units/quantity.ts";
import { faultsOf } from "./check-sheet.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import { at, evening, harvestSupper } from "./small-meals.ts";
import { cook } from "./virtual-cook.ts";

const serving = fc.constantFrom(null, at(-30), at(60), at(150), at(400));

function handsOnOrder(input: PlanInput, sheet: RunSheet): readonly string[] {
  const ids = input.tasks.filter((task) => task.step.hands === "on").map((task) => task.id);
  return sheet.entries.map((entry) => entry.task).filter((id) => ids.includes(id));
}

describe("any meal", () => {
  it("[P1] gets a sheet that an independent check finds nothing wrong with", () => {
    fc.assert(
      fc.property(madeUpMeal, serving, (dishes, serveAt) => {
        const input = evening(dishes, { serveAt });
        expect(faultsOf(input, plan(input))).toEqual([]);
      }),
      { numRuns: 60, seed: 7 },
    );
  }, 120_000);

  it("[P29] gets the same sheet from the same input, whatever was planned before", () => {
    fc.assert(
      fc.property(madeUpMeal, serving, (dishes, serveAt) => {
        const input = evening(dishes, { serveAt });
        const first = plan(input);
        plan({ ...input, now: at(30) });
        expect(plan(input)).toEqual(first);
        expect(plan({ ...input, tasks: expandTasks(input.meal) })).toEqual(first);
      }),
      { numRuns: 10, seed: 11 },
    );
  });

  it("[P30] can be cooked to the end by its sheets, each of them right at its minute", () => {
    fc.assert(
      fc.property(madeUpMeal, serving, fc.constantFrom(0.8, 1, 1.3), (dishes, serveAt, pace) => {
        const input = evening(dishes, { serveAt });
        const { sheets, isFinished } = cook(input, (task) => (task.length % 2 === 0 ? pace : 1));
        expect(isFinished).toBe(true);
        expect(sheets.flatMap((one) => faultsOf(one.input, one.sheet))).toEqual([]);
      }),
      { numRuns: 4, seed: 5 },
    );
  }, 120_000);
});

describe("from minute to minute", () => {
  it.each([null, at(60), at(150)])(
    "[P31] a cook who keeps to the sheet is never sent back and forth (%s)",
    (serveAt) => {
      const input = evening(harvestSupper, { serveAt });
      const first = plan(input);
      const { order, endedAt } = cook(input);
      expect(order).toEqual(handsOnOrder(input, first));
      // The slack before serving shrinks with the work that is left; dinner itself does not slip.
      expect(endedAt).toBeLessThanOrEqual(Math.max(first.readyAt, serveAt ?? 0) + 60_000);
    },
  );

  it("[P31] while nothing happens the order of the cook's work stays the same", () => {
    for (const serveAt of [null, at(150)]) {
      const orders = Array.from({ length: 40 }, (_, minute) => {
        const input = evening(harvestSupper, { serveAt, now: at(minute), since: at(0) });
        return handsOnOrder(input, plan(input)).join();
      });
      expect(new Set(orders).size).toBe(1);
    }
  });

  it.each([null, at(60), at(150)])("[P36] the dial is turned once for each heat (%s)", (serveAt) => {
    const first = plan(evening(harvestSupper, { serveAt }));
    const { sheets } = cook(evening(harvestSupper, { serveAt }));
    const turns =
      sheets.filter((one, index) => one.input.ovens !== sheets[index - 1]?.input.ovens).length - 1;
    expect(turns).toBe(first.ovenMoves.length);
  });

  it("[P32] what should have begun and has not simply moves to now", () => {
    const input = evening(harvestSupper, { now: at(25) });
    expect(plan(input).entries[0]?.start).toBe(at(25));
  });
});

describe("the check of a sheet", () => {
  const input = evening(harvestSupper, { serveAt: at(150) });
  const sheet = plan(input);
  const move = (id: string, minutes: number): RunSheet => ({
    ...sheet,
    entries: sheet.entries.map((entry) =>
      entry.task === id
        ? {
            ...entry,
            start: instant(entry.start + minutes * 60_000),
            end: instant(entry.end + minutes * 60_000),
          }
        : entry,
    ),
  });

  it.each([
    ["slaw/dress", -120, "slaw/dress starts before slaw/chill allows"],
    ["squash/halve", -10, "squash/halve starts in the past"],
    ["sauce/chop", -5, "cook has squash/halve and sauce/chop at once"],
    ["sauce/blend", 60, "sauce/blend silently comes late after sauce/simmer"],
    ["squash/roast", -20, "squash/roast goes into an oven of"],
  ])("[P1] finds %s moved by %s minutes", (id, minutes, fault) => {
    expect(faultsOf(input, move(id, minutes)).join("\n")).toContain(fault);
  });

  it("[P1] finds a task that is missing, and an oven that was never turned on", () => {
    expect(faultsOf(input, { ...sheet, entries: sheet.entries.slice(1) })).toContain(
      "squash/halve stands 0 times",
    );
    expect(faultsOf(input, { ...sheet, ovenMoves: [] }).join("\n")).toContain(
      "goes into an oven of 70 set to off",
    );
  });
});
