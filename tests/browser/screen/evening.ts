import { callsNow } from "../../../core/cook/calls-now.ts";
import type { Call } from "../../../core/cook/calls.ts";
import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { MealLog, Session } from "../../../core/cook/session.ts";
import type { Pace } from "../../../core/pace/pace.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { minutes, plus, seconds } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { MealBook } from "../../../server/kitchen/meal-book.ts";
import type { Pantry } from "../../../core/sync/protocol.ts";

/** An evening stopped at some moment. */
export interface Stopped {
  readonly log: MealLog;
  readonly now: Instant;
}

const root = new URL("../../..", import.meta.url).pathname;

/** The kitchen's own recipes, as the start page gets them: the welcome supper, and all meals. */
export async function ownPantry(): Promise<{
  readonly pantry: Pantry;
  readonly meal: CookingMeal;
  readonly all: readonly CookingMeal[];
}> {
  const book = await MealBook.open(`${root}recipes`);
  const listing = book.listing();
  const all = listing.meals.map(({ id }) => {
    const cooking = book.meal(id, {});
    if (!cooking.ok) throw new Error(cooking.error);
    return cooking.value;
  });
  const meal = all.find(({ id }) => id === "welcome-supper");
  if (meal === undefined) throw new Error("there is no welcome supper");
  return { meal, all, pantry: { ...listing, cooking: null } };
}

let count = 0;

/** Carries out one order; a refused one changes nothing. */
export function give(log: MealLog, now: Instant, order: Order): MealLog {
  const command = { id: `c${(count += 1)}`, at: now, order };
  const decision = decide(command, log);
  return decision.ok ? appendEvents(log, numbered(command, log, decision.value)) : log;
}

/** Cooks as the caller calls, every 20 seconds, until `isThere`; throws when that never comes. */
export function cookUntil(
  meal: CookingMeal,
  start: Instant,
  isThere: (calls: readonly Call[], session: Session) => boolean,
  paces: readonly Pace[] | null = null,
): Stopped {
  const begin: Order = { type: "BeginMeal", meal, serveAt: null };
  let log = give(emptyLog, start, paces === null ? begin : { ...begin, paces });
  for (let now = start; now < plus(start, minutes(300)); now = plus(now, seconds(20))) {
    log = give(log, now, { type: "Tick" });
    const { session } = log;
    if (session === null) throw new Error("no meal has begun");
    const calls = callsNow(session, runSheetOf(session, now), now);
    if (isThere(calls, session)) return { log, now };
    const [first] = calls;
    const order = first === undefined ? null : orderFor(first, now);
    if (order !== null) log = give(log, now, order);
  }
  throw new Error("that moment never came");
}

function orderFor(call: Call, now: Instant): Order | null {
  switch (call.kind) {
    case "ring":
      return call.timer.task === null
        ? { type: "AnswerRing", timer: call.timer.id }
        : { type: "FinishTask", task: call.timer.task };
    case "attend":
      return { type: "GiveAttention", task: call.task.id, moment: call.moment.key };
    case "heat":
      return { type: "SetOven", oven: call.oven, heat: call.heat };
    case "take-off":
      return { type: "FinishTask", task: call.task.id };
    case "put-on":
      return { type: "StartTask", task: call.task.id };
    case "do":
      return plus(call.since, call.task.step.time.high) <= now
        ? { type: "FinishTask", task: call.task.id }
        : null;
    case "serve":
      return { type: "EndMeal" };
    case "wait":
    case "held":
    case "ended":
      return null;
  }
}
