import { callsNow } from "../../core/cook/calls-now.ts";
import type { MealEvent } from "../../core/cook/events.ts";
import { undoneCommands } from "../../core/cook/fold.ts";
import type { Task } from "../../core/plan/model.ts";
import { between, inMinutes, type Instant } from "../../core/units/quantity.ts";
import { clockTime } from "./clock-time.ts";
import type { Turn, View } from "./stage.ts";

/** How the evening went. */
export interface Summary {
  readonly meal: string;
  /** When everything was ready to serve, as "18:27"; null where it was not. */
  readonly onTheTable: string | null;
  /** When the cook wanted to eat; null: as soon as possible. */
  readonly wanted: string | null;
  /** Whole minutes after the wanted time, 0 when in time; null where one of the two is missing. */
  readonly lateMinutes: number | null;
  readonly steps: {
    readonly inAll: number;
    readonly called: number;
    readonly finished: number;
    readonly skipped: number;
    /** Titles of those that were neither finished nor skipped. */
    readonly open: readonly string[];
  };
  readonly timers: { readonly started: number; readonly rings: number; readonly stillRinging: number };
  readonly said: number;
  readonly notUnderstood: readonly string[];
  readonly refused: readonly string[];
}

/** The events that count: what was undone never happened. */
function standing(events: readonly MealEvent[]): readonly MealEvent[] {
  const undone = undoneCommands(events);
  return events.filter(({ command }) => !undone.has(command));
}

/** The moment of the last step's end, once none is open; null before. */
function readyAt({ session }: View): Instant | null {
  const ends = [...session.progress.values()].map((one) =>
    one.state === "done" || one.state === "skipped" ? one.at : null,
  );
  return ends.reduce<Instant | null>(
    (last, at) => (last === null || at === null ? null : at > last ? at : last),
    ends[0] ?? null,
  );
}

/** The steps as the log and the evening's end tell of them. */
function stepsOf({ session, log }: View): Summary["steps"] {
  const called = new Set<string>();
  for (const { happening } of standing(log.events)) {
    const puts = ["TaskCalled", "TaskStarted", "TaskChosen"].includes(happening.type);
    if (puts && "task" in happening && happening.task !== null) called.add(happening.task);
  }
  const states = [...session.progress.values()].map(({ state }) => state);
  const isOpen = (task: Task): boolean => {
    const state = session.progress.get(task.id)?.state;
    return state !== "done" && state !== "skipped";
  };
  return {
    inAll: session.tasks.length,
    called: called.size,
    finished: states.filter((state) => state === "done").length,
    skipped: states.filter((state) => state === "skipped").length,
    open: session.tasks.filter(isOpen).map((task) => task.step.title),
  };
}

function timersOf({ session, sheet, log, now }: View, turns: readonly Turn[]): Summary["timers"] {
  return {
    started: standing(log.events).filter(({ happening }) => happening.type === "TimerStarted").length,
    rings: turns.filter((turn) => turn.who === "caller" && turn.how === "ring").length,
    stillRinging: callsNow(session, sheet, now).filter(({ kind }) => kind === "ring").length,
  };
}

/** Sums up an evening from its log and its conversation. */
export function summaryOf(view: View, turns: readonly Turn[]): Summary {
  const { meal, serveAt } = view.session;
  const ready = readyAt(view);
  const cook = turns.filter((turn) => turn.who === "cook");
  const late = ready === null || serveAt === null ? null : inMinutes(between(serveAt, ready));
  return {
    meal: meal.name,
    onTheTable: ready === null ? null : clockTime(ready),
    wanted: serveAt === null ? null : clockTime(serveAt),
    lateMinutes: late === null ? null : Math.max(0, Math.floor(late)),
    steps: stepsOf(view),
    timers: timersOf(view, turns),
    said: cook.length,
    notUnderstood: cook.filter(({ intent }) => intent === null).map(({ said }) => said),
    refused: turns.flatMap((turn) => (turn.who === "kitchen" ? [turn.said] : [])),
  };
}

/** The summary in sentences, for people. */
export function summarySentences(summary: Summary): readonly string[] {
  const { steps, timers, onTheTable, wanted, lateMinutes } = summary;
  const late =
    lateMinutes === null || wanted === null
      ? ""
      : lateMinutes === 0
        ? `, in time for ${wanted}`
        : `, ${lateMinutes} min after ${wanted}`;
  return [
    onTheTable === null
      ? `${summary.meal} did not get to the table.`
      : `${summary.meal} was ready at ${onTheTable}${late}.`,
    `Steps: ${steps.called} of ${steps.inAll} called, ${steps.finished} finished, ${steps.skipped} skipped.`,
    ...(steps.open.length === 0 ? [] : [`Still open: ${steps.open.join(", ")}.`]),
    `Timers: ${timers.started} started, ${timers.rings} rings${timers.stillRinging > 0 ? `, ${timers.stillRinging} still going` : ""}.`,
    `The cook spoke ${summary.said} times; ${summary.notUnderstood.length} not understood, ${summary.refused.length} refused.`,
  ];
}
