import { instant, plus } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { InHand, Moment, RunSheet, Task } from "../plan/model.ts";
import type { Worker } from "../plan/worker.ts";
import { momentsOf } from "../plan/tasks.ts";
import { compareHeat } from "../units/temperature.ts";
import type { Call } from "./calls.ts";
import { heldTasks } from "./hands.ts";
import { callAhead, due, upcoming } from "./next-call.ts";
import type { Session } from "./session.ts";
import { ringOf } from "./timer.ts";

/**
 * All that wants the cook now, what the helpers have in hand apart, the most pressing first;
 * never empty. Food that burns comes before the cook's own work: late rings, attention, what has
 * to come off, looks, oven heat, then the step in hand, then what should be going already.
 */
export function callsNow(session: Session, sheet: RunSheet, now: Instant): readonly Call[] {
  if (session.phase.state === "ended") return [{ kind: "ended", at: session.phase.at }];
  const rings = ringCalls(session, now);
  const urgent = [
    ...rings.filter((call) => call.ring === "end"),
    ...attentionCalls(session, now),
    ...takeOffCalls(session, now),
    ...rings.filter((call) => call.ring === "look"),
  ];
  if (session.phase.state === "held") return [...urgent, { kind: "held", since: session.phase.since }];
  const work = [...heatCalls(session, sheet, now), ...focusCall(session), ...putOnCalls(session, sheet, now)];
  const calls: readonly Call[] = [...urgent, ...work];
  return calls.length > 0 ? calls : [restCall(session, sheet, now)];
}

type RingCall = Extract<Call, { readonly kind: "ring" }>;

function ringCalls(session: Session, now: Instant): readonly RingCall[] {
  return [...session.timers.values()]
    .flatMap((timer): readonly RingCall[] => {
      const ring = ringOf(timer, now);
      return ring === null ? [] : [{ kind: "ring", timer, ...ring }];
    })
    .toSorted((a, b) => a.since - b.since);
}

/**
 * The moments that are due and not yet seen to; of several stirs that were missed, the last.
 * Read off the running step itself, up to its latest end, and not off the run sheet, which
 * moves what is overdue.
 */
export function dueMoments(session: Session, now: Instant): readonly Moment[] {
  const latest = new Map<string, Moment>();
  for (const moment of session.tasks.flatMap((task) => runningMoments(session, task))) {
    if (moment.at <= now) latest.set(`${moment.task} ${moment.do}`, moment);
  }
  return [...latest.values()]
    .filter((moment) => !session.attended.has(moment.key))
    .toSorted((a, b) => a.at - b.at);
}

/** The attention moments of a step that runs, in order of time; none for one that does not. */
export function runningMoments(session: Session, task: Task): readonly Moment[] {
  const progress = session.progress.get(task.id);
  if (progress?.state !== "running") return [];
  return momentsOf(task, progress.startedAt, plus(progress.startedAt, progress.span.high));
}

function attentionCalls(session: Session, now: Instant): readonly Call[] {
  return dueMoments(session, now).flatMap((moment): readonly Call[] => {
    const task = session.tasks.find((one) => one.id === moment.task);
    return task === undefined ? [] : [{ kind: "attend", task, moment }];
  });
}

/** Unattended steps that are past their end and whose ring has been answered, stopped or cancelled. */
function takeOffCalls(session: Session, now: Instant): readonly Call[] {
  return session.tasks.flatMap((task): readonly Call[] => {
    const progress = session.progress.get(task.id);
    if (progress?.state !== "running" || task.step.hands === "on") return [];
    const since = plus(progress.startedAt, progress.span.high);
    const timers = [...session.timers.values()].filter((timer) => timer.task === task.id);
    const speaks = timers.some((timer) => timer.run.state === "paused" || ringOf(timer, now) !== null);
    return since <= now && !speaks ? [{ kind: "take-off", task, since }] : [];
  });
}

function heatCalls(session: Session, sheet: RunSheet, now: Instant): readonly Call[] {
  return sheet.ovenMoves
    .filter((move) => move.at <= plus(now, callAhead) && !isSet(session, move))
    .slice(0, 1)
    .map(({ oven, heat, at, for: ids }) => ({
      kind: "heat",
      oven,
      heat,
      at,
      for: session.tasks.filter((task) => ids.includes(task.id)),
    }));
}

function isSet(session: Session, move: RunSheet["ovenMoves"][number]): boolean {
  const heat = session.ovens.find((oven) => oven.oven === move.oven)?.heat ?? null;
  return heat !== null && compareHeat(heat, move.heat) === 0;
}

const focusCall = (session: Session): readonly Call[] => inHandCall(session, "cook", session.focus);

/** What each helper has in hand, the first helper's first. */
export const helperCalls = (session: Session): readonly Call[] =>
  session.phase.state === "cooking"
    ? session.helpers.flatMap(({ helper, inHand }) => inHandCall(session, helper, inHand))
    : [];

function inHandCall(session: Session, by: Worker, inHand: InHand | null): readonly Call[] {
  const task = session.tasks.find((one) => one.id === inHand?.task);
  return inHand === null || task === undefined ? [] : [callOf(task, inHand.calledAt, by)];
}

/** Unattended steps that should be going by now while the cook is busy with something else. */
function putOnCalls(session: Session, sheet: RunSheet, now: Instant): readonly Call[] {
  const held = heldTasks(session);
  return due(session, sheet, now)
    .filter(({ task }) => task.step.hands === "off" && !held.includes(task.id))
    .map(({ task, entry }) => callOf(task, entry.start, "cook"));
}

const callOf = (task: Task, since: Instant, by: Worker): Call => ({
  kind: task.step.hands === "on" ? "do" : "put-on",
  task,
  since,
  by,
});

/** Nothing to do: until when, or everything is ready. */
function restCall(session: Session, sheet: RunSheet, now: Instant): Call {
  const held = heldTasks(session);
  const next = upcoming(session, sheet).find(({ task }) => !held.includes(task.id));
  if (next !== undefined)
    return { kind: "wait", until: instant(Math.max(next.entry.start, now)), next: next.task };
  const running = sheet.entries.filter((entry) => session.progress.get(entry.task)?.state === "running");
  const first = running.toSorted((a, b) => a.look - b.look)[0];
  if (first === undefined) return { kind: "serve", since: session.lastAt };
  return { kind: "wait", until: instant(Math.max(first.look, now)), next: null };
}
