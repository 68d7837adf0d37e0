import { err, ok } from "../units/result.ts";
import { minutes } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Task } from "../plan/model.ts";
import type { Decision } from "./decision.ts";
import { callOf, decideTask } from "./decide-task.ts";
import { decideTimer } from "./decide-timer.ts";
import type { Happening } from "./events.ts";
import { appendEvents } from "./fold.ts";
import { lastCommand } from "./last-command.ts";
import type { Command, MealOrder, Order } from "./orders.ts";
import type { MealLog, Session } from "./session.ts";
import { nextToCall } from "./next-call.ts";
import { isReady } from "./ready.ts";
import { runSheetOf } from "./run-sheet.ts";
import { findSwap } from "./swap.ts";
import { decideWay } from "./take-way.ts";

/** A follower that may wait no longer than this is called as soon as the step before it ends. */
const atOnce = minutes(2);

/**
 * What should happen? Refuses with a reason and changes nothing, or lists what happens, in
 * order; an empty list where the command was carried out before. When the cook is free
 * afterwards and something is due, the caller puts it before them (`TaskCalled`).
 */
export function decide(command: Command, log: MealLog): Decision {
  if (log.events.some((event) => event.command === command.id)) return ok([]);
  const wanted = decideOrder(command, log);
  return wanted.ok ? ok(settled(command, log, wanted.value)) : wanted;
}

function decideOrder(command: Command, log: MealLog): Decision {
  const { order, at } = command;
  const { session } = log;
  if (order.type === "BeginMeal") {
    if (session !== null && session.phase.state !== "ended")
      return err({ code: "MealUnderway", name: session.meal.name });
    return ok(beginning(order));
  }
  if (session === null) return err({ code: "NoMeal" });
  if (order.type === "UndoLast") return undoLast(log);
  if (order.type === "Tick") return ok([]);
  if (session.phase.state === "ended") return err({ code: "MealOver" });
  if ("task" in order) return decideTask(order, session, at);
  if ("timer" in order) return decideTimer(order, session, at);
  return decideMeal(order, session, at);
}

function beginning({ meal, serveAt, paces }: Extract<Order, { type: "BeginMeal" }>): readonly Happening[] {
  const begun: Happening = { type: "MealBegun", meal, serveAt };
  return paces === undefined ? [begun] : [begun, { type: "PaceKnown", paces }];
}

function decideMeal(order: MealOrder, session: Session, at: Instant): Decision {
  switch (order.type) {
    case "HoldEverything":
      return session.phase.state === "held" ? err({ code: "AlreadyHeld" }) : ok([{ type: "EverythingHeld" }]);
    case "GoOn":
      return session.phase.state === "held" ? ok([{ type: "WentOn" }]) : err({ code: "NotHeld" });
    case "SetServing":
      if (order.serveAt !== null && order.serveAt <= at)
        return err({ code: "ServingPast", serveAt: order.serveAt });
      return ok([{ type: "ServingSet", serveAt: order.serveAt }]);
    case "SetOven":
      if (!session.ovens.some((oven) => oven.oven === order.oven))
        return err({ code: "NoSuchOven", asked: order.oven });
      return ok([{ type: "OvenSet", oven: order.oven, heat: order.heat }]);
    case "UseSwap":
      return decideSwap(order, session);
    case "SetPace":
      return ok([{ type: "PaceSet", kind: order.kind, wish: order.wish }]);
    case "ForgetPace":
      return ok([{ type: "PaceForgotten" }]);
    case "TakeWay":
      return decideWay(order, session);
    case "CancelAllTimers":
      return ok([...session.timers.keys()].map((timer) => ({ type: "TimerCancelled", timer })));
    case "EndMeal":
      return ok([{ type: "MealEnded" }]);
  }
}

function decideSwap(order: Extract<MealOrder, { readonly type: "UseSwap" }>, session: Session): Decision {
  const { dish, ingredient, swap } = order;
  const found = findSwap(session, dish, ingredient, swap);
  if (found === null) return err({ code: "NoSuchSwap", asked: ingredient });
  const used = session.swaps.some(
    (one) => one.dish === dish && one.ingredient === ingredient && one.swap === swap,
  );
  return used
    ? err({ code: "SwapUsedBefore", use: found.use })
    : ok([{ type: "SwapUsed", dish, ingredient, swap }]);
}

function undoLast(log: MealLog): Decision {
  const undoes = lastCommand(log);
  return undoes === null ? err({ code: "NothingToUndo" }) : ok([{ type: "Undone", undoes }]);
}

/**
 * Adds the call of what is due next, when nothing is before the cook; or of what cannot wait, when the step that
 * has just ended has a follower "at once": then the step in hand is put aside for it.
 */
function settled(command: Command, log: MealLog, happenings: readonly Happening[]): readonly Happening[] {
  const after = appendEvents(log, numbered(command, log, happenings)).session;
  if (after === null || after.phase.state !== "cooking") return happenings;
  const follower = followerAtOnce(after, happenings, command.at);
  if (follower !== null) return [...happenings, ...callOf(follower, after)];
  if (after.focus !== null) return happenings;
  const next = nextToCall(after, runSheetOf(after, command.at), command.at);
  return next === null ? happenings : [...happenings, { type: "TaskCalled", task: next.id }];
}

/** The step that has to follow what has just ended, and within two minutes; null where none has. */
function followerAtOnce(session: Session, happenings: readonly Happening[], at: Instant): Task | null {
  const ended = new Set(happenings.flatMap((one) => (one.type === "TaskFinished" ? [one.task] : [])));
  const follows = session.tasks.find(
    (task) =>
      session.progress.get(task.id)?.state === "waiting" &&
      task.after.some((link) => ended.has(link.task) && link.atMost !== null && link.atMost <= atOnce) &&
      isReady(session, task, at),
  );
  return follows ?? null;
}

/** Turns what was decided into events that follow on the log. */
export function numbered(
  command: Command,
  log: MealLog,
  happenings: readonly Happening[],
): MealLog["events"] {
  const last = log.events.at(-1)?.seq ?? 0;
  return happenings.map((happening, index) => ({
    seq: last + index + 1,
    at: command.at,
    command: command.id,
    happening,
  }));
}
