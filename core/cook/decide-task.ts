import type { Instant, Seconds } from "../units/quantity.ts";
import { err, ok } from "../units/result.ts";
import type { Task, TaskId } from "../plan/model.ts";
import { addSeconds } from "../units/quantity.ts";
import type { Decision } from "./decision.ts";
import type { Happening } from "./events.ts";
import { holderOf } from "./hands.ts";
import type { TaskOrder } from "./orders.ts";
import { timerId } from "./orders.ts";
import { blockerOf } from "./ready.ts";
import type { Refusal } from "./refusal.ts";
import type { Session } from "./session.ts";

/** Orders about one step. */
export function decideTask(order: TaskOrder, session: Session, at: Instant): Decision {
  const task = session.tasks.find((one) => one.id === order.task);
  if (task === undefined) return err({ code: "NoSuchTask", asked: order.task });
  return decideOne(order, task, session, at);
}

function decideOne(order: TaskOrder, task: Task, session: Session, at: Instant): Decision {
  const state = session.progress.get(task.id)?.state ?? "waiting";
  const isOver = state === "done" || state === "skipped";
  const { title } = task.step;
  switch (order.type) {
    case "StartTask":
    case "ChooseTask":
      if (isOver) return err({ code: "AlreadyDone", title });
      return startOrChoose(order, task, session, at);
    case "FinishTask":
      if (isOver) return err({ code: "AlreadyDone", title });
      return ok([{ type: "TaskFinished", task: task.id }, ...timersStopped(session, task.id)]);
    case "SkipTask":
      if (isOver) return err({ code: "AlreadyDone", title });
      return ok([{ type: "TaskSkipped", task: task.id }, ...timersStopped(session, task.id)]);
    case "ReopenTask":
      if (!isOver) return err({ code: "StillOpen", title });
      return ok([{ type: "TaskReopened", task: task.id }, ...callOf(task, session)]);
    case "GiveAttention":
      if (state !== "running") return err({ code: "NoSuchMoment", title });
      return ok([{ type: "AttentionGiven", task: task.id, moment: order.moment }]);
  }
}

/** Hands-on: it comes before the cook. Hands-off: starting sets it going, choosing puts it before the cook. */
function startOrChoose(order: TaskOrder, task: Task, session: Session, at: Instant): Decision {
  const { title, hands } = task.step;
  const holder = holderOf(session, task.id);
  const isRunning = session.progress.get(task.id)?.state === "running";
  if (isRunning && (hands === "off" || holder === "cook")) return err({ code: "AlreadyRunning", title });
  const early = notYet(task, session, at);
  if (early !== null) return err(early);
  if (order.type === "StartTask" && hands === "off") return ok(setGoing(task, session));
  return ok([{ type: "TaskChosen", task: task.id }, ...callOf(task, session)]);
}

/** Why a step may not begin at `at`; null where it may. */
export function notYet(task: Task, session: Session, at: Instant): Refusal | null {
  const { title } = task.step;
  const blocker = blockerOf(session, task, at);
  if (blocker === null) return null;
  return blocker.kind === "open"
    ? { code: "FirstFinish", title, first: blocker.title }
    : { code: "TooSoon", title, wait: blocker.wait };
}

/** Puts a step before the cook, and the one in hand aside. */
export function callOf(task: Task, session: Session): readonly Happening[] {
  const aside: readonly Happening[] =
    session.focus === null || session.focus.task === task.id
      ? []
      : [{ type: "TaskSetAside", task: session.focus.task }];
  return [...aside, { type: "TaskCalled", task: task.id }];
}

/** A hands-off step starts together with its timer. */
function setGoing(task: Task, session: Session): readonly Happening[] {
  const { step, dish } = task;
  return [
    { type: "TaskStarted", task: task.id },
    {
      type: "TimerStarted",
      timer: timerId(`${task.id}~${session.timerCount + 1}`),
      name: step.title,
      task: task.id,
      dish: dish.id,
      span: step.time,
      ceiling: ceilingOf(task),
      chime: session.timerCount,
    },
  ];
}

/** The longest that the recipe lets a step run; null where it sets no end. */
function ceilingOf(task: Task): Seconds | null {
  const { time, latest, extend } = task.step;
  if (extend !== null) return addSeconds(time.high, extend.atMost);
  return latest === "hard" ? time.high : null;
}

function timersStopped(session: Session, id: TaskId): readonly Happening[] {
  return [...session.timers.values()]
    .filter((timer) => timer.task === id && timer.run.state !== "stopped")
    .map((timer) => ({ type: "TimerStopped", timer: timer.id }));
}
