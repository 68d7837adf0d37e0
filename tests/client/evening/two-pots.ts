import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { after, at, burner, dish, five, handsOff, handsOn, meal, mins } from "../../core/plan/small-meals.ts";

/** A pot that takes its time and a salad that does not: small enough to plan by hand. Times are made up. */
export const twoPots: readonly Dish[] = [
  dish("stew", [
    handsOn("chop-the-roots", mins(5)),
    handsOff("simmer-the-stew", mins(30), { after: [after("chop-the-roots")], needs: [burner] }),
  ]),
  dish("salad", [handsOn("cut-the-radishes", mins(5))]),
];

/** What was ordered, and how many minutes after five. */
export type Ordered = readonly [minute: number, order: Order];

/** An evening of some dishes that began at five, after some orders. */
export function eveningAt(
  minute: number,
  dishes: readonly Dish[],
  serveAt: Instant | null,
  ...orders: readonly Ordered[]
): { readonly session: Session; readonly sheet: RunSheet; readonly now: Instant } {
  const begin: Ordered = [0, { type: "BeginMeal", meal: meal(dishes), serveAt }];
  const log = [begin, ...orders].reduce((before, [when, order], index) => {
    const command = { id: `o${index}`, at: at(when), order };
    const decision = decide(command, before);
    if (!decision.ok) throw new Error(`${order.type} was refused: ${decision.error.code}`);
    return appendEvents(before, numbered(command, before, decision.value));
  }, emptyLog);
  if (log.session === null) throw new Error("no meal has begun");
  return { session: log.session, sheet: runSheetOf(log.session, at(minute)), now: at(minute) };
}

/** "5:07 pm". */
export function clockOf(moment: Instant): string {
  const minute = Math.round((moment - five) / 60_000);
  return `${5 + Math.floor(minute / 60)}:${String(minute % 60).padStart(2, "0")} pm`;
}
