import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { timerId } from "../../../core/cook/orders.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { at, evening, give, outcome, sessionOf, supper, task } from "./supper.ts";

const tasks = Object.values(task);
const timers = ["a", "b"].map(timerId);
const anyTask = fc.constantFrom(...tasks);
const anyTimer = fc.constantFrom(...timers);
const anyOrder: fc.Arbitrary<Order> = fc.oneof(
  fc
    .constantFrom<Order["type"]>("StartTask", "FinishTask", "SkipTask", "ReopenTask", "ChooseTask")
    .chain((type) => anyTask.map((one) => ({ type, task: one }) as Order)),
  fc
    .constantFrom("PauseTimer", "ResumeTimer", "RestartTimer", "StopTimer", "CancelTimer", "AnswerRing")
    .chain((type) => anyTimer.map((timer) => ({ type, timer }))),
  fc
    .tuple(anyTimer, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 9 }))
    .map(([timer, low, more]): Order => ({
      type: "StartTimer",
      timer,
      name: null,
      span: { low: minutes(low), high: minutes(low + more) },
      dish: null,
    })),
  fc.constantFrom<Order>(
    { type: "Tick" },
    { type: "HoldEverything" },
    { type: "GoOn" },
    { type: "UndoLast" },
    { type: "CancelAllTimers" },
    { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } },
  ),
);

/** Carries out what is not refused, a minute apart. */
function played(orders: readonly Order[]): MealLog {
  return orders.reduce((log, order, index) => {
    const command = { id: `p${index}`, at: at(index), order };
    const decision = decide(command, log);
    return decision.ok ? appendEvents(log, numbered(command, log, decision.value)) : log;
  }, evening());
}

describe("the meal log", () => {
  it("[L1] replaying a log gives the state that was live", () => {
    fc.assert(
      fc.property(fc.array(anyOrder, { maxLength: 40 }), (orders) => {
        const live = played(orders);
        expect(appendEvents(emptyLog, live.events).session).toEqual(live.session);
      }),
      { numRuns: 60 },
    );
  });

  it("[L2] a log survives being written down and read back", () => {
    const live = played([
      { type: "FinishTask", task: task.halve },
      { type: "StartTask", task: task.roast },
    ]);
    const read = (JSON.parse(JSON.stringify(live.events)) as unknown[]).map(parseEvent);
    expect(read).toEqual(live.events.map((value) => ({ ok: true, value })));
  });

  it("[L3] undo takes back everything that the last command did, and nothing else", () => {
    fc.assert(
      fc.property(fc.array(anyOrder, { maxLength: 20 }), anyTask, (orders, one) => {
        const before = played(orders.filter((order) => order.type !== "UndoLast"));
        const skipped = decide({ id: "skip", at: at(60), order: { type: "SkipTask", task: one } }, before);
        fc.pre(skipped.ok);
        const after = give(before, 60, { type: "SkipTask", task: one }, "skip");
        const happening = { type: "Undone", undoes: "skip" } as const;
        // What the caller puts before the free cook afterwards is new, not a remnant: leave it out here.
        const undone = { seq: after.events.length + 1, at: at(60), command: "undo", happening } as const;
        const restored = sessionOf(appendEvents(after, [undone]));
        expect({ ...restored, lastAt: 0 }).toEqual({ ...sessionOf(before), lastAt: 0 });
        expect(outcome(after, 61, { type: "UndoLast" })).toContainEqual(happening);
      }),
      { numRuns: 60 },
    );
  });

  it("[L4] a command with an id that the log holds already does nothing", () => {
    const log = give(evening(), 1, { type: "FinishTask", task: task.halve }, "once");
    expect(decide({ id: "once", at: at(2), order: { type: "FinishTask", task: task.halve } }, log)).toEqual({
      ok: true,
      value: [],
    });
  });

  it("[L5] events that the log holds already are passed over, so a snapshot may overlap", () => {
    const log = evening([0, { type: "FinishTask", task: task.halve }]);
    expect(appendEvents(log, log.events)).toBe(log);
    expect(appendEvents(appendEvents(emptyLog, log.events.slice(0, 2)), log.events)).toEqual(log);
  });

  it("[L6] before a meal every order is refused, and after its end too", () => {
    const order: Order = { type: "FinishTask", task: task.halve };
    expect(decide({ id: "a", at: at(0), order }, emptyLog)).toEqual({ ok: false, error: { code: "NoMeal" } });
    expect(outcome(give(evening(), 1, { type: "EndMeal" }), 2, order)).toBe("MealOver");
    expect(outcome(evening(), 1, { type: "BeginMeal", meal: supper, serveAt: null })).toBe("MealUnderway");
  });

  it("[L7] with nothing done there is nothing to undo, and what the clock called is not the cook's doing", () => {
    expect(outcome(give(evening(), 1, { type: "Tick" }), 2, { type: "UndoLast" })).toBe("NothingToUndo");
  });

  it("[L8] an order of another shape is refused with a sentence that names the field", () => {
    expect(parseOrder({ type: "FinishTask" })).toMatchObject({ ok: false });
    expect(parseOrder({ type: "LengthenTimer", timer: "a", by: -3 })).toMatchObject({ ok: false });
    const wrong = parseOrder({
      type: "StartTimer",
      timer: "a",
      name: "x",
      span: { low: "1", high: 2 },
      dish: null,
    });
    expect(wrong.ok ? "" : wrong.error).toContain("span.low");
    expect(parseOrder({ type: "DropTables" })).toMatchObject({ ok: false });
  });

  it("[L9] a finished step can be undone and its timer runs on as if nothing had been", () => {
    const simmering = evening(
      [0, { type: "FinishTask", task: task.wash }],
      [1, { type: "StartTask", task: task.simmer }],
    );
    const undone = give(give(simmering, 9, { type: "FinishTask", task: task.simmer }), 10, {
      type: "UndoLast",
    });
    expect(sessionOf(undone).timers).toEqual(sessionOf(simmering).timers);
    expect(sessionOf(undone).progress).toEqual(sessionOf(simmering).progress);
  });
});
