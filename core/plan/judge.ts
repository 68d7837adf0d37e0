import type { Schedule } from "./drafts.ts";
import type { Problem } from "./problem.ts";

/** What there is to say against a schedule; milliseconds from now, or sums of milliseconds. */
export interface Verdict {
  /** Hard limits missed, in all: maximum lags, and what must end close to serving. */
  readonly missed: number;
  /** When everything is ready. */
  readonly ready: number;
  /** How much longer hot food waits than it should. */
  readonly waits: number;
  /** How much work by hand lies in the lull before serving that could be done before. */
  readonly lullWork: number;
  readonly ovenChanges: number;
  /** How often an attention moment comes when nobody has a hand free. */
  readonly interruptions: number;
}

/** When an act ends. */
export const endOf = (problem: Problem, schedule: Schedule, index: number): number =>
  (schedule[index]?.start ?? 0) + (problem.acts[index]?.length ?? 0);

/** When the last act ends; now, if nothing is left. */
export function readyOf(problem: Problem, schedule: Schedule): number {
  return problem.acts.reduce((latest, _, index) => Math.max(latest, endOf(problem, schedule, index)), 0);
}

/** When the result of an act is taken up for the last time: by another act, or at the table. */
export function takenUpAt(problem: Problem, schedule: Schedule, index: number, table: number): number {
  const takers = problem.takers[index] ?? [];
  if (takers.length === 0) return table;
  return takers.reduce((last, taker) => Math.max(last, schedule[taker]?.start ?? 0), -Infinity);
}

/**
 * For each act the moment before which it should not start if it is to keep its maximum lags to what follows
 * it and its nearness to serving; -Infinity where it keeps them. The hard limits that can be mended by delay.
 */
export function wantedStarts(problem: Problem, schedule: Schedule, table: number): readonly number[] {
  return problem.acts.map((act, index) => {
    if (act.running !== null) return -Infinity;
    const start = schedule[index]?.start ?? 0;
    const close = act.task.step.endsBeforeServing;
    let wanted = close === null ? -Infinity : table - close * 1000 - act.length;
    for (const arc of problem.after[index] ?? []) {
      if (arc.atMost !== null)
        wanted = Math.max(wanted, (schedule[arc.to]?.start ?? 0) - arc.atMost - act.length);
    }
    return wanted > start ? wanted : -Infinity;
  });
}

function missedBy(problem: Problem, schedule: Schedule, index: number, table: number): number {
  const act = problem.acts[index];
  if (act === undefined) return 0;
  const start = schedule[index]?.start ?? 0;
  let missed = act.latest === null ? 0 : Math.max(0, start - act.latest);
  for (const arc of problem.before[index] ?? []) {
    if (arc.atMost !== null) missed += Math.max(0, start - endOf(problem, schedule, arc.from) - arc.atMost);
  }
  const close = act.task.step.endsBeforeServing;
  return close === null ? missed : missed + Math.max(0, table - close * 1000 - start - act.length);
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

/** How many of the moments lie before this one, or at it; they are in order. */
function countUntil(moments: Float64Array, at: number): number {
  let low = 0;
  let high = moments.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((moments[middle] ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

function interruptions({ acts, cooks }: Problem, schedule: Schedule): number {
  const startOf = (index: number): number => schedule[index]?.start ?? 0;
  const on = acts.flatMap((act, index) => (act.task.step.hands === "on" ? [index] : []));
  const starts = Float64Array.from(on, startOf).sort();
  const ends = Float64Array.from(on, (index) => startOf(index) + (acts[index]?.length ?? 0)).sort();
  let count = 0;
  acts.forEach(({ moments }, from) => {
    // Begun before the moment, and not over by then; times are whole milliseconds.
    for (const offset of moments) {
      const at = offset + startOf(from);
      const busy = countUntil(starts, at - 1) - countUntil(ends, at);
      count += Math.max(0, busy - cooks + 1);
    }
  });
  return count;
}

/** How much of what could be over before the lull lies in it, in milliseconds. */
function workInLull({ acts, lull, mayLeave }: Problem, schedule: Schedule, table: number): number {
  return acts.reduce((sum, { length }, index) => {
    if (mayLeave[index] !== true) return sum;
    const start = schedule[index]?.start ?? 0;
    return sum + Math.max(0, start + length - Math.max(start, table - lull));
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
    if (hold === null) return;
    const wait = takenUpAt(problem, schedule, index, table) - endOf(problem, schedule, index);
    waits += Math.max(0, wait - hold * 1000);
  });
  const changes = ovenChanges(problem, schedule);
  return {
    missed,
    ready,
    waits,
    lullWork: workInLull(problem, schedule, table),
    ovenChanges: changes,
    interruptions: interruptions(problem, schedule),
  };
}

function goalsOf(verdict: Verdict, serving: number): readonly number[] {
  const late = Math.max(0, verdict.ready - serving);
  return [verdict.missed, late, verdict.waits, verdict.lullWork, verdict.ovenChanges, verdict.interruptions];
}

/**
 * Whether `a` is better than `b` for a dinner at `serving` (milliseconds from now): fewer hard limits missed,
 * then less late, then less waiting of hot food, then less work in the lull, then fewer oven changes and interruptions.
 */
export function isBetter(a: Verdict, b: Verdict, serving: number): boolean {
  const theirs = goalsOf(b, serving);
  const differs = goalsOf(a, serving).map((mine, goal) => mine - (theirs[goal] ?? 0));
  return (differs.find((difference) => difference !== 0) ?? 0) < 0;
}

/** How much better a plan must be before the cook's order of work is turned over for it. */
const WORTH_MS = 2 * 60_000;

/**
 * Better by enough to be worth another order of work: by two minutes in one goal, and no worse in any that
 * comes before. A goal given away a little each minute would be given away altogether.
 */
export function isWorthwhile(a: Verdict, b: Verdict, serving: number): boolean {
  const theirs = goalsOf(b, serving);
  const differs = goalsOf(a, serving).map((mine, goal) => mine - (theirs[goal] ?? 0));
  const gain = differs.slice(0, 4).findIndex((difference) => difference < -WORTH_MS);
  return gain >= 0 && differs.slice(0, gain).every((difference) => difference <= 0);
}
