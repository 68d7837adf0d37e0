import type { MealEvent } from "../../core/cook/events.ts";
import { undoneCommands } from "../../core/cook/fold.ts";
import { between, inMinutes, type Instant } from "../../core/units/quantity.ts";
import { clockTime } from "./clock-time.ts";
import { firstCall, type Turn, type View } from "./stage.ts";

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
  return ends.reduce<Instant | null>((last, at) => (last === null || at === null ? null : at > last ? at : last), ends[0] ?? null);
}

/** Sums up an evening from its log and its conversation. */
export function summaryOf(view: View, turns: readonly Turn[]): Summary {
  const { session, log } = view;
  const ready = readyAt(view);
  const called = new Set<string>();
  let started = 0;
  for (const { happening } of standing(log.events)) {
    if (happening.type === "TaskCalled" || happening.type === "TaskStarted" || happening.type === "TaskChosen") {
      called.add(happening.task);
    }
    if (happening.type === "TimerStarted") started += 1;
  }
  const states = session.tasks.map((task) => ({ task, state: session.progress.get(task.id)?.state ?? "waiting" }));
  const count = (wanted: string): number => states.filter(({ state }) => state === wanted).length;
  const cook = turns.filter((turn) => turn.who === "cook");
  const rings = turns.filter((turn) => turn.who === "caller" && turn.how === "ring");
  return {
    meal: session.meal.name,
    onTheTable: ready === null ? null : clockTime(ready),
    wanted: session.serveAt === null ? null : clockTime(session.serveAt),
    lateMinutes: ready === null || session.serveAt === null ? null : Math.max(0, Math.ceil(inMinutes(between(session.serveAt, ready)))),
    steps: {
      inAll: states.length,
      called: called.size,
      finished: count("done"),
      skipped: count("skipped"),
      open: states.flatMap(({ task, state }) => (state === "done" || state === "skipped" ? [] : [task.step.title])),
    },
    timers: { started, rings: rings.length, stillRinging: firstCall(view)?.kind === "ring" ? 1 : 0 },
    said: cook.length,
    notUnderstood: cook.filter(({ intent }) => intent === null).map(({ said }) => said),
    refused: turns.flatMap((turn) => (turn.who === "kitchen" ? [turn.said] : [])),
  };
}

/** The summary in sentences, for people. */
export function summarySentences(summary: Summary): readonly string[] {
  const { steps, timers, onTheTable, wanted, lateMinutes } = summary;
  const late = lateMinutes === null || wanted === null ? "" : lateMinutes === 0 ? `, in time for ${wanted}` : `, ${lateMinutes} min after ${wanted}`;
  return [
    onTheTable === null ? `${summary.meal} did not get to the table.` : `${summary.meal} was ready at ${onTheTable}${late}.`,
    `Steps: ${steps.called} of ${steps.inAll} called, ${steps.finished} finished, ${steps.skipped} skipped.`,
    ...(steps.open.length === 0 ? [] : [`Still open: ${steps.open.join(", ")}.`]),
    `Timers: ${timers.started} started, ${timers.rings} rings${timers.stillRinging > 0 ? ", one of them still going" : ""}.`,
    `The cook spoke ${summary.said} times; ${summary.notUnderstood.length} not understood, ${summary.refused.length} refused.`,
  ];
}
