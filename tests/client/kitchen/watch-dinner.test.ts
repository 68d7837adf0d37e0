import { signal } from "@preact/signals";
import { describe, expect, it } from "vitest";
import { watchDinner } from "../../../client/kitchen/watch-dinner.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import { seconds, plus } from "../../../core/units/quantity.ts";
import { dish, handsOn, meal, mins } from "../../core/plan/small-meals.ts";
import { at, give } from "../../core/talk/supper.ts";
import { clockAt, storeOf } from "./still-page.ts";

/** Ten minutes of kneading and ten of shaping, the kneading done after fourteen: what a page says until a quarter past. */
function saidUntil(minute: number, answer: string | null): readonly string[] {
  const steps = ["knead", "shape"].map((id) => dish(id, [handsOn(`${id}-the-dough`, mins(10))]));
  const begun = give(emptyLog, 0, { type: "BeginMeal", meal: meal(steps), serveAt: null });
  const late = give(begun, 14, { type: "FinishTask", task: taskId("knead/knead-the-dough") });
  const now = signal(at(0));
  const log = signal(begun);
  const session = signal(begun.session);
  const sheet = signal<RunSheet | null>(null);
  const clock = clockAt(now);
  const store = storeOf({ log, session, sheet });
  const said: string[] = [];
  const lines = signal(answer === null ? [] : [{ who: "caller" as const, at: at(14), text: answer }]);
  const stop = watchDinner(clock, store, lines, (sentence) => said.push(sentence));
  while (now.value < at(minute)) {
    session.value = (now.value < at(14) ? begun : late).session;
    sheet.value = session.value === null ? null : runSheetOf(session.value, now.value);
    now.value = plus(now.value, seconds(15));
  }
  stop();
  now.value = at(60);
  return said;
}

describe("the watch over dinner", () => {
  it("[C106] says a slip once", () => {
    expect(saidUntil(20, null)).toEqual(["Dinner slips four minutes to five twenty-four."]);
  });

  it("[C106] says nothing that an answer has just told", () => {
    expect(saidUntil(20, "About five twenty-four, in ten minutes.")).toEqual([]);
  });
});
