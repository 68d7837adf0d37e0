import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import { sentence } from "../../../core/cook/refusal.ts";
import { planInputOf } from "../../../core/cook/run-sheet.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { at, evening, give, outcome, sessionOf, supper } from "./supper.ts";

const wish = (length: number | null) =>
  ({ type: "SetLull", length: length === null ? null : minutes(length) }) as const;

describe("the wish for a lull before serving", () => {
  it("[P134] is in the log, holds until it is changed, and reaches the planner", () => {
    const log = evening([1, wish(10)]);
    expect(log.events.at(-1)?.happening).toEqual({ type: "LullSet", length: minutes(10) });
    expect(planInputOf(sessionOf(log), at(2)).lull).toBe(minutes(10));
    expect(sessionOf(give(log, 2, wish(null))).lull).toBeNull();
  });

  it("[P134] is taken back by undo; one from an evening before is not, and goes with the beginning", () => {
    const begun = give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: null, lull: minutes(15) });
    expect(begun.events.map(({ happening }) => happening.type).slice(0, 2)).toEqual([
      "MealBegun",
      "LullKept",
    ]);
    expect(outcome(begun, 1, { type: "UndoLast" })).toBe("NothingToUndo");
    const undone = give(give(begun, 1, wish(5)), 2, { type: "UndoLast" });
    expect(sessionOf(undone).lull).toBe(minutes(15));
  });

  it("[P134] of nothing, of more than an hour, or for what is the plan already is refused with a sentence", () => {
    expect(outcome(evening(), 1, wish(0.5))).toBe("NoSuchLull");
    expect(outcome(evening(), 1, wish(61))).toBe("NoSuchLull");
    expect(outcome(evening([1, wish(10)]), 2, wish(10))).toBe("LullAlready");
    expect(outcome(evening(), 2, wish(null))).toBe("LullAlready");
    expect(sentence({ code: "LullAlready", length: minutes(10) })).toBe(
      "That is the plan already: ten minutes before dinner are kept free.",
    );
  });

  it("[P134] is read from a socket or a disk only in its shape", () => {
    expect(parseOrder(wish(10))).toEqual({ ok: true, value: wish(10) });
    expect(parseOrder(wish(null))).toMatchObject({ ok: true });
    for (const length of [0, 59, 3601, "600", undefined])
      expect(parseOrder({ type: "SetLull", length })).toMatchObject({ ok: false });
    for (const type of ["LullSet", "LullKept"]) {
      const event = { seq: 1, at: at(0), command: "c", happening: { type, length: minutes(10) } };
      expect(parseEvent(event)).toEqual({ ok: true, value: event });
    }
  });
});
