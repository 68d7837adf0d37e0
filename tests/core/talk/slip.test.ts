import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { beginWatch, lookAgain, saySlip } from "../../../core/talk/slip.ts";
import type { DinnerWatch } from "../../../core/talk/slip.ts";
import { after, burner, dish, handsOff, handsOn, meal, mins } from "../plan/small-meals.ts";
import { at, give } from "./supper.ts";

/** Ten minutes of chopping, then half an hour on the stove: begun at five, dinner is at 5:40. */
const soup = dish("soup", [
  handsOn("chop-the-leek", mins(10)),
  handsOff("simmer-the-soup", mins(30), { after: [after("chop-the-leek")], needs: [burner] }),
]);
const salad = dish("salad", [handsOn("peel-the-carrots", mins(5))]);
const chop = taskId("soup/chop-the-leek");
const simmer = taskId("soup/simmer-the-soup");
const finish = (minute: number): readonly [number, Order] => [minute, { type: "FinishTask", task: chop }];
const start = (minute: number): readonly [number, Order] => [minute, { type: "StartTask", task: simmer }];

/** What is said of slips from five o'clock on, with the minute; the clock is looked at four times a minute. */
function said(
  dishes: readonly Dish[],
  serve: number | null,
  until: number,
  ...orders: readonly (readonly [number, Order])[]
): readonly (readonly [number, string])[] {
  const serveAt = serve === null ? null : at(serve);
  let log = give(emptyLog, 0, { type: "BeginMeal", meal: meal(dishes), serveAt });
  let watch: DinnerWatch | null = null;
  const told: (readonly [number, string])[] = [];
  const waiting = [...orders];
  for (let minute = 0; minute <= until; minute += 0.25) {
    while (waiting[0] !== undefined && waiting[0][0] <= minute) {
      const [[when, order]] = waiting.splice(0, 1) as [readonly [number, Order]];
      log = give(log, when, order);
    }
    const now = at(minute);
    const { session } = log;
    if (session === null) throw new Error("the meal has begun");
    const sheet = runSheetOf(session, now);
    watch ??= beginWatch(session, sheet, now);
    const looked = lookAgain(watch, session, sheet, now);
    watch = looked.watch;
    if (looked.slip !== null)
      told.push([minute, saySlip(looked.slip, session, sheet, { now, utcOffsetMinutes: () => 0 })]);
  }
  return told;
}

describe("a dinner that slips", () => {
  it("[C106] is told once, when it has settled, with the time that it is then", () => {
    const slips = said([soup], null, 35, finish(13), start(13));
    expect(slips.map(([, sentence]) => sentence)).toEqual([
      "Dinner slips three minutes to five forty-three.",
    ]);
    expect(slips[0]?.[0]).toBeGreaterThanOrEqual(13);
    expect(slips[0]?.[0]).toBeLessThan(16);
  });

  it("[C106] names a dish that can wait", () => {
    expect(said([soup, salad], null, 20, finish(13), start(13)).map(([, sentence]) => sentence)).toEqual([
      "Dinner slips three minutes to five forty-three; the salad can wait.",
    ]);
  });

  it("[C106] is not told from minute to minute while it drifts: at five minutes, and when it stands still", () => {
    const slips = said([soup], null, 30, finish(18), start(18));
    expect(slips.map(([, sentence]) => sentence)).toEqual([
      "Dinner slips five minutes to five forty-five.",
      "Dinner slips three minutes to five forty-eight.",
    ]);
  });

  it("[C106] is not told for a minute, nor where there is time to spare", () => {
    expect(said([soup], null, 35, finish(11), start(11))).toEqual([]);
    expect(said([soup], 90, 60, finish(15), start(40))).toEqual([]);
  });

  it("[C106] is not told of a time that the cook sets, nor while everything is on hold", () => {
    const later: readonly [number, Order] = [5, { type: "SetServing", serveAt: at(75) }];
    expect(said([soup], null, 30, later, finish(10), start(10))).toEqual([]);
    const held: readonly [number, Order] = [2, { type: "HoldEverything" }];
    expect(said([soup], null, 40, held)).toEqual([]);
  });
});
