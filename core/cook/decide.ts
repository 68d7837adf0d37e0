import { err, ok } from "../units/result.ts";
import { minutes } from "../units/quantity.ts";
import type { Worker } from "../plan/worker.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { leastLull, mostLull } from "../plan/lull.ts";
import type { Task, TaskId } from "../plan/model.ts";
import { decideAmount } from "./change-amount.ts";
import type { Decision } from "./decision.ts";
import { decideHelper } from "./decide-helper.ts";
import { callOf, decideTask } from "./decide-task.ts";
import { decideTimer } from "./decide-timer.ts";
import type { Happening } from "./events.ts";
import { appendEvents } from "./fold.ts";
import { freeWorkers, holderOf } from "./hands.ts";
import { lastCommand } from "./last-command.ts";
import type { Command, MealOrder, Order } from "./orders.ts";
import type { MealLog, Session } from "./session.ts";
import { portionId } from "../mise/portion.ts";
import { callable } from "./next-call.ts";
import { decideLeaveOut } from "./leave-out.ts";
import { decideNote, decideNoteAnswer } from "./notes.ts";
import { isReady } from "./ready.ts";
import { runSheetOf } from "./run-sheet.ts";
import { findSwap } from "./swap.ts";
import { decideServings } from "./change-servings.ts";
import { decideWay } from "./take-way.ts";

/** A follower that may wait no longer than this is called as soon as the step before it ends. */
const atOnce = minutes(2);

/**
 * What should happen? Refuses with a reason and changes nothing, or lists what happens, in
 * order; an empty list where the command was carried out before. When the cook or a helper is
 * free afterwards and something is due, the caller puts it before them (`TaskCalled`, `TaskHanded`).
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
  if ("helper" in order) return decideHelper(order, session, at);
  if ("task" in order) return decideTask(order, session, at);
  if ("timer" in order) return decideTimer(order, session, at);
  if (order.type === "NoteNextTime") return decideNote(order.note, session);
  if (order.type === "AnswerNote") return decideNoteAnswer(order.key, order.answer, session, at);
  return decideMeal(order, session, at);
}

function beginning(order: Extract<Order, { type: "BeginMeal" }>): readonly Happening[] {
  const { meal, serveAt, paces, lull, helpers = [], swaps = [], notes = [], noteAnswers = [] } = order;
  return [
    { type: "MealBegun", meal, serveAt },
    ...(paces === undefined ? [] : [{ type: "PaceKnown", paces } as const]),
    ...(lull === undefined ? [] : [{ type: "LullKept", length: lull } as const]),
    ...helpers.map((helper) => ({ type: "HelperCame", helper }) as const),
    ...swaps.map((swap) => ({ type: "SwapUsed", ...swap }) as const),
    ...(notes.length === 0 ? [] : [{ type: "NotesOffered", notes } as const]),
    ...noteAnswers.map((answered) => ({ type: "NoteAnswered", ...answered }) as const),
  ];
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
    case "SetLull":
      return decideLull(order.length, session);
    case "UseSwap":
      return decideSwap(order, session);
    case "SetPace":
      return ok([{ type: "PaceSet", kind: order.kind, wish: order.wish }]);
    case "ForgetPace":
      return ok([{ type: "PaceForgotten" }]);
    case "LeaveOutDish":
      return decideLeaveOut(order.dish, session);
    case "TakeWay":
      return decideWay(order, session);
    case "ChangeServings":
      return decideServings(order, session);
    case "CancelAllTimers":
      return ok([...session.timers.keys()].map((timer) => ({ type: "TimerCancelled", timer })));
    case "EndMeal":
      return ok([{ type: "MealEnded" }]);
    case "FinishPreparing":
    case "ReopenPreparing":
      return decidePreparing(order, session);
    case "ChangeAmount":
      return decideAmount(order, session);
  }
}

/** Also what no page sends is held to the limits: a voice may have misheard. */
function decideLull(length: Seconds | null, session: Session): Decision {
  if (length !== null && (length < leastLull || length > mostLull)) return err({ code: "NoSuchLull" });
  return length === session.lull ? err({ code: "LullAlready", length }) : ok([{ type: "LullSet", length }]);
}

function decideSwap(order: Extract<MealOrder, { readonly type: "UseSwap" }>, session: Session): Decision {
  const { dish, ingredient, swap } = order;
  const found = findSwap(session.meal, order);
  if (found === null) return err({ code: "NoSuchSwap", asked: ingredient });
  const used = session.swaps.some(
    (one) => one.dish === dish && one.ingredient === ingredient && one.swap === swap,
  );
  return used
    ? err({ code: "SwapUsedBefore", use: found.use })
    : ok([{ type: "SwapUsed", dish, ingredient, swap }]);
}

/** Only what the meal has can be ticked off. */
function decidePreparing(
  { type, portions }: Extract<MealOrder, { readonly portions: unknown }>,
  { meal }: Session,
): Decision {
  const known = meal.dishes.flatMap((dish) =>
    dish.steps.flatMap((step) => step.uses.map((use) => portionId(dish.id, step.id, use.ingredient))),
  );
  const stranger = portions.find((id) => !known.includes(id));
  if (stranger !== undefined) return err({ code: "NoSuchTask", asked: stranger });
  return ok([{ type: type === "FinishPreparing" ? "PreparingFinished" : "PreparingReopened", portions }]);
}

function undoLast(log: MealLog): Decision {
  const undoes = lastCommand(log);
  return undoes === null ? err({ code: "NothingToUndo" }) : ok([{ type: "Undone", undoes }]);
}

/**
 * Adds the call of what cannot wait, when the step that has just ended has a follower "at once"; and of what is due
 * next for everyone who has nothing in hand.
 */
function settled(command: Command, log: MealLog, happenings: readonly Happening[]): readonly Happening[] {
  const after = (then: readonly Happening[]): Session | null =>
    appendEvents(log, numbered(command, log, then)).session;
  const session = after(happenings);
  if (session === null || session.phase.state !== "cooking") return happenings;
  const soon = [...happenings, ...followingCall(session, log.session, happenings, command.at)];
  const then = after(soon) ?? session;
  const free = freeWorkers(then);
  if (free.length === 0) return soon;
  const next = callable(then, runSheetOf(then, command.at), command.at);
  return [...soon, ...free.flatMap((worker, at) => callTo(worker, next[at] ?? null))];
}

/** Puts a step before whoever is free. */
function callTo(worker: Worker, task: Task | null): readonly Happening[] {
  if (task === null) return [];
  return worker === "cook"
    ? [{ type: "TaskCalled", task: task.id }]
    : [{ type: "TaskHanded", task: task.id, helper: worker }];
}

/** The follower "at once" goes to whoever ended the step before; if they are not free, to who is, or else to the cook. */
function followingCall(
  session: Session,
  before: Session | null,
  happenings: readonly Happening[],
  at: Instant,
): readonly Happening[] {
  const follower = followerAtOnce(session, happenings, at);
  if (follower === null) return [];
  const free = freeWorkers(session);
  const by = before === null ? null : holderOf(before, follower.ended);
  const worker = free.find((one) => one === by) ?? free[0] ?? "cook";
  return worker === "cook" ? callOf(follower.task, session) : callTo(worker, follower.task);
}

/** The step that has to follow what has just ended, and within two minutes; null where none has. */
function followerAtOnce(
  session: Session,
  happenings: readonly Happening[],
  at: Instant,
): { readonly task: Task; readonly ended: TaskId } | null {
  const ended = happenings.flatMap((one) => (one.type === "TaskFinished" ? [one.task] : []));
  for (const task of session.tasks) {
    const isWaiting = session.progress.get(task.id)?.state === "waiting";
    if (!isWaiting || holderOf(session, task.id) !== null) continue;
    const link = task.after.find(
      (one) => ended.includes(one.task) && one.atMost !== null && one.atMost <= atOnce,
    );
    if (link !== undefined && isReady(session, task, at)) return { task, ended: link.task };
  }
  return null;
}

/** Turns what was decided into events that follow on the log. */
export function numbered(
  command: Pick<Command, "id" | "at">,
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
