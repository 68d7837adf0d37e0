import type { Schedule } from "./generate.ts";
import type { Problem } from "./problem.ts";

/** What there is to say against a schedule; milliseconds from now, or sums of milliseconds. */
export interface Verdict {
  /** Hard limits missed, in all: maximum lags, and what must end close to serving. */
  readonly missed: number;
  /** When everything is ready. */
  readonly ready: number;
  /** How much longer hot food waits than it should. */
  readonly waits: number;
  readonly ovenChanges: number;
  /** How often an attention moment falls into other hands-on work. */
  readonly interruptions: number;
}

/** When an act ends. */
export const endOf = (problem: Problem, schedule: Schedule, index: number): number =>
  (schedule[index]?.start ?? 0) + (problem.acts[index]?.length ?? 0);

/** When the last act ends; now, if nothing is left. */
export function readyOf(problem: Problem, schedule: Schedule): number {
  return problem.acts.reduce((latest, _, index) => Math.max(latest, endOf(problem, schedule, index)), 0);
}

/** How long the result of an act waits: for the last that takes it up, or for the table. */
export function waitOf(problem: Problem, schedule: Schedule, index: number, serving: number): number {
  // The next batch takes up the pan, not the food.
  const step = problem.acts[index]?.task.step;
  const takers = (problem.after[index] ?? []).filter((arc) => problem.acts[arc.to]?.task.step !== step);
  const batches = problem.acts.flatMap((act, other) => (act.task.step === step ? [other] : []));
  const last = takers.length > 0 ? takers : batches.flatMap((other) => problem.after[other] ?? []);
  const until = last
    .filter((arc) => problem.acts[arc.to]?.task.step !== step)
    .map((arc) => schedule[arc.to]?.start ?? serving);
  const end = endOf(problem, schedule, index);
  return Math.max(0, (until.length > 0 ? Math.max(...until) : serving) - end);
}

function missedBy(problem: Problem, schedule: Schedule, index: number, serving: number): number {
  const act = problem.acts[index];
  if (act === undefined) return 0;
  const start = schedule[index]?.start ?? 0;
  let missed = act.latest === null ? 0 : Math.max(0, start - act.latest);
  for (const arc of problem.before[index] ?? []) {
    if (arc.atMost !== null) missed += Math.max(0, start - endOf(problem, schedule, arc.from) - arc.atMost);
  }
  const close = act.task.step.endsBeforeServing;
  return close === null ? missed : missed + Math.max(0, serving - close * 1000 - start - act.length);
}

function ovenChanges(problem: Problem, schedule: Schedule): number {
  const used = schedule.flatMap(({ start, baking }) => (baking === null ? [] : [{ start, ...baking }]));
  used.sort((a, b) => a.start - b.start);
  return problem.ovens.reduce((changes, oven, index) => {
    let heat = oven.set;
    for (const one of used) {
      if (one.oven !== index || one.heat === heat) continue;
      heat = one.heat;
      changes += 1;
    }
    return changes;
  }, 0);
}

function interruptions(problem: Problem, schedule: Schedule): number {
  const moments = problem.acts.flatMap((act, index) =>
    act.moments.map((offset) => offset + (schedule[index]?.start ?? 0)),
  );
  if (moments.length === 0) return 0;
  return problem.acts.reduce((count, act, index) => {
    if (act.task.step.hands === "off") return count;
    const start = schedule[index]?.start ?? 0;
    return count + moments.filter((at) => at > start && at < start + act.length).length;
  }, 0);
}

/** Judges a schedule for a dinner at `serving`, or when it is ready if that is later. */
export function judge(problem: Problem, schedule: Schedule, serving: number): Verdict {
  const ready = readyOf(problem, schedule);
  const table = Math.max(serving, ready);
  let missed = 0;
  let waits = 0;
  problem.acts.forEach((act, index) => {
    missed += missedBy(problem, schedule, index, table);
    const { hold } = act.task.step;
    if (hold !== null) waits += Math.max(0, waitOf(problem, schedule, index, table) - hold * 1000);
  });
  return {
    missed,
    ready,
    waits,
    ovenChanges: ovenChanges(problem, schedule),
    interruptions: interruptions(problem, schedule),
  };
}

/** How much better a plan must be before the cook's order of work is turned over for it. */
const WORTH_MS = 2 * 60_000;

/**
 * Whether `a` is better than `b` for a dinner at `serving` (milliseconds from now): fewer hard limits missed,
 * then less late, then less waiting of hot food, then fewer oven changes, then fewer interruptions.
 * `margin` is how many milliseconds count as equal.
 */
export function isBetter(a: Verdict, b: Verdict, serving: number, margin = 0): boolean {
  const goals = [
    [a.missed, b.missed, margin],
    [Math.max(0, a.ready - serving), Math.max(0, b.ready - serving), margin],
    [a.waits, b.waits, margin],
  ] as const;
  for (const [mine, theirs, equal] of goals) {
    if (Math.abs(mine - theirs) > equal) return mine < theirs;
  }
  if (margin > 0) return false;
  return (
    a.ovenChanges - b.ovenChanges < 0 ||
    (a.ovenChanges === b.ovenChanges && a.interruptions < b.interruptions)
  );
}

/** Better by enough to be worth another order of work. */
export const isWorthwhile = (a: Verdict, b: Verdict, serving: number): boolean =>
  isBetter(a, b, serving, WORTH_MS);
