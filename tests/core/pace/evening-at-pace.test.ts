import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cuesAt } from "../../../core/cook/cues.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import { planInputOf } from "../../../core/cook/run-sheet.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { knownPaces, pacesFor } from "../../../core/pace/known-paces.ts";
import type { Pace, WorkKind } from "../../../core/pace/pace.ts";
import { atPace, workKinds } from "../../../core/pace/pace.ts";
import { outlookOf } from "../../../core/plan/on-time.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { between, inMinutes } from "../../../core/units/quantity.ts";
import { at, give, outcome, sessionOf, sheetAt, supper, task } from "../cook/supper.ts";
import { faultsOf } from "../plan/check-sheet.ts";

type Times = Partial<Record<WorkKind, number>>;
const paces = (times: Times): readonly Pace[] =>
  pacesFor(supper, knownPaces([], null)).map((pace) => ({ ...pace, times: times[pace.kind] ?? 1 }));
const begun = (times: Times | null): MealLog => {
  const order: Order = { type: "BeginMeal", meal: supper, serveAt: null };
  return give(emptyLog, 0, times === null ? order : { ...order, paces: paces(times) });
};

/** How long each step is planned to take, in minutes. */
function lengths(log: MealLog, minute = 0): Readonly<Record<string, number>> {
  const { entries } = sheetAt(log, minute);
  return Object.fromEntries(entries.map(({ task: id, start, end }) => [id, inMinutes(between(start, end))]));
}

/** The first swap that the meal offers. */
function anySwap({ dishes }: CookingMeal) {
  const [found] = dishes.flatMap((dish) =>
    dish.ingredients.flatMap(({ id, swaps }) =>
      swaps.map((_, swap) => ({ dish: dish.id, ingredient: id, swap })),
    ),
  );
  if (found === undefined) throw new Error("the meal offers no swap");
  return found;
}

const recipes = {
  [task.halve]: 5,
  [task.roast]: 60,
  [task.mash]: 5,
  [task.wash]: 5,
  [task.simmer]: 20,
  [task.dress]: 2,
};
const slowHands = { cutting: 2, washing: 1.5, mixing: 0.8 };

describe("an evening at the cook's own pace", () => {
  it("[P96] work by hand is planned at the cook's pace; what goes by itself takes as long as it takes", () => {
    expect(lengths(begun(null))).toEqual(recipes);
    expect(lengths(begun({}))).toEqual(recipes);
    expect(lengths(begun(slowHands))).toEqual({
      ...recipes,
      [task.halve]: 10,
      [task.wash]: 7.5,
      [task.mash]: 4,
    });
  });

  it("[P96] a swap leaves the pace as it is, and a step that is done in a way without hands has none", () => {
    const log = begun(slowHands);
    const { tasks, paces } = sessionOf(log);
    const swapped = give(log, 1, { type: "UseSwap", ...anySwap(sessionOf(log).meal) });
    expect(lengths(swapped, 1)[task.mash]).toBe(4);
    const byItself = tasks.map((one) => ({ ...one, step: { ...one.step, hands: "off" as const } }));
    expect(new Set(atPace(byItself, paces).map(({ pace }) => pace))).toEqual(new Set([1]));
  });

  it("[P96] whatever the paces, the sheet stands up to its check, and neither fire, rest nor timer is any shorter", () => {
    const anyTimes = fc.record(
      Object.fromEntries(workKinds.map((kind) => [kind, fc.double({ min: 0.5, max: 2.5, noNaN: true })])),
    ) as fc.Arbitrary<Times>;
    fc.assert(
      fc.property(anyTimes, (times) => {
        const log = begun(times);
        const session = sessionOf(log);
        const sheet = sheetAt(log, 0);
        expect(faultsOf(planInputOf(session, session.lastAt), sheet)).toEqual([]);
        const planned = lengths(log);
        expect([planned[task.roast], planned[task.simmer]]).toEqual([60, 20]);
        expect(session.tasks.map(({ step, after }) => [step.time, after])).toEqual(
          sessionOf(begun(null)).tasks.map(({ step, after }) => [step.time, after]),
        );
      }),
      { numRuns: 40 },
    );
  });

  it("[P96] a timer runs as long as the recipe says, for the slowest cook and the quickest", () => {
    const cooked = (times: Times): unknown => {
      const halved = give(begun(times), 5, { type: "FinishTask", task: task.halve });
      return outcome(halved, 6, { type: "StartTask", task: task.roast });
    };
    expect(cooked({ stove: 2.5, cutting: 2.5, other: 2.5 })).toEqual(cooked({ stove: 0.5, cutting: 0.5 }));
  });

  it("[P96] who takes longer is asked later whether it is done; who is quicker no sooner than the recipe has it", () => {
    const asksAfter = (times: Times, minute: number): boolean => {
      const log = begun(times);
      return cuesAt(sessionOf(log), sheetAt(log, minute), at(minute)).some(({ key }) =>
        key.startsWith("still "),
      );
    };
    expect([asksAfter({}, 6.9), asksAfter({}, 7)]).toEqual([false, true]);
    expect([asksAfter({ cutting: 2 }, 11.9), asksAfter({ cutting: 2 }, 12)]).toEqual([false, true]);
    expect([asksAfter({ cutting: 0.5 }, 6.9), asksAfter({ cutting: 0.5 }, 7)]).toEqual([false, true]);
  });

  it("[P96] the outlook reckons with the same pace", () => {
    const middle = (times: Times): number => {
      const log = begun(times);
      const { readyAt } = outlookOf(planInputOf(sessionOf(log), sessionOf(log).lastAt), sheetAt(log, 0), {
        seed: 1,
        evenings: 200,
      });
      return inMinutes(between(at(0), readyAt.middle));
    };
    // The squash is halved while the oven heats, which takes longer at any pace; mashing it comes last, and takes five
    // minutes more.
    const more = middle({ cutting: 2, mixing: 2 }) - middle({});
    expect([more > 4, more < 7]).toEqual([true, true]);
  });

  it("[L50] the paces follow the meal under one command; the log read back gives the same sheet", () => {
    const log = begun(slowHands);
    expect(
      log.events.map(({ happening, command }) => [happening.type, command === log.events[0]?.command]),
    ).toEqual([
      ["MealBegun", true],
      ["PaceKnown", true],
      ["TaskCalled", true],
    ]);
    const later = give(log, 3, { type: "SetPace", kind: "washing", wish: "slower" });
    const stored = later.events.map((event) => parseEvent(JSON.parse(JSON.stringify(event))));
    const again = appendEvents(
      emptyLog,
      stored.flatMap((read) => (read.ok ? [read.value] : [])),
    );
    expect(again).toEqual(later);
    expect(sheetAt(again, 4)).toEqual(sheetAt(later, 4));
  });

  it("[L50] a log from before paces were known is read as ever", () => {
    const log = begun(null);
    expect(log.events.map(({ happening }) => happening.type)).toEqual(["MealBegun", "TaskCalled"]);
    expect(sessionOf(log).paces).toEqual([]);
    expect(outcome(log, 1, { type: "SetPace", kind: "cutting", wish: "slower" })).toEqual([
      { type: "PaceSet", kind: "cutting", wish: "slower" },
    ]);
  });

  it("[L51] a pace that the cook sets moves the plan at once, and undo takes it back", () => {
    const log = give(begun(slowHands), 1, { type: "SetPace", kind: "cutting", wish: "as-written" });
    expect(lengths(log, 1)[task.halve]).toBe(5);
    expect(lengths(give(log, 2, { type: "UndoLast" }), 2)[task.halve]).toBe(10);
    expect(lengths(give(log, 2, { type: "SetPace", kind: "cutting", wish: null }), 2)[task.halve]).toBe(10);
  });

  it("[L51] forgotten, everything is planned as the recipes say; undo brings it back", () => {
    const log = give(begun(slowHands), 1, { type: "ForgetPace" });
    expect(lengths(log, 1)).toEqual(recipes);
    expect(lengths(give(log, 2, { type: "UndoLast" }), 2)[task.wash]).toBe(7.5);
  });

  it("[L51] undo never takes back what was known at the beginning", () => {
    expect(outcome(begun(slowHands), 1, { type: "UndoLast" })).toBe("NothingToUndo");
  });

  it("[L51] an order that names no kind of work, or no pace, is refused with the field", () => {
    expect(parseOrder({ type: "SetPace", kind: "juggling", wish: null })).toMatchObject({ ok: false });
    expect(parseOrder({ type: "SetPace", kind: "cutting", wish: "lazier" })).toMatchObject({ ok: false });
    expect(parseOrder({ type: "SetPace", kind: "cutting", wish: "slower" })).toEqual({
      ok: true,
      value: { type: "SetPace", kind: "cutting", wish: "slower" },
    });
  });
});
