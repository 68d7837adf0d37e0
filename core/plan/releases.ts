import type { Schedule } from "./drafts.ts";
import { takenUpAt, wantedStarts } from "./judge.ts";
import type { Problem } from "./problem.ts";

/** What does not say how long it keeps is made at most this much earlier than it has to be. */
export const KEEPS_MS = 2 * 3_600_000;
/** How close to serving an act has to end, in milliseconds; Infinity: it keeps. */
export function keeps(problem: Problem, index: number): number {
  const step = problem.acts[index]?.task.step;
  const hold = problem.takers[index]?.length === 0 ? (step?.hold ?? Infinity) : Infinity;
  return Math.min(step?.endsBeforeServing ?? Infinity, hold) * 1000;
}

/** From when on an act is wanted: hot and wilting things late, what is bound to them too, the rest early. */
export function wantedFrom(
  problem: Problem,
  latest: readonly number[],
  serving: number,
  first: readonly number[],
) {
  return problem.acts.map((act, index) => {
    const { step } = act.task;
    const last = latest[index] ?? 0;
    if (first.includes(index)) return act.release;
    const isBound = [...(problem.before[index] ?? []), ...(problem.after[index] ?? [])].some(
      (arc) => arc.atMost !== null,
    );
    if (step.hold !== null || step.endsBeforeServing !== null || isBound) return Math.max(act.release, last);
    const earliest = step.ahead === null ? last - KEEPS_MS : serving - step.ahead * 1000 - act.length;
    return Math.max(act.release, Math.min(last, earliest));
  });
}

/** Later releases for what comes too early: for a maximum lag, for the table, or (soft) for hot food to wait. */
export function delayed(
  problem: Problem,
  schedule: Schedule,
  release: readonly number[],
  table: number,
  first: readonly number[],
) {
  const wanted = wantedStarts(problem, schedule, table);
  return release.map((from, index) => {
    const act = problem.acts[index];
    if (act === undefined || act.running !== null || first.includes(index)) return from;
    const { hold } = act.task.step;
    const hot = hold === null ? from : takenUpAt(problem, schedule, index, table) - hold * 1000 - act.length;
    return Math.max(from, wanted[index] ?? from, hot);
  });
}
