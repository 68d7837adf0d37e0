import { topological } from "./limits.ts";
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

/**
 * How much earlier than at the last moment each act may be done, in milliseconds: what is hot or wilts no sooner; else as
 * far as it keeps, and as far as it may lie before what must follow it.
 */
function leeways(problem: Problem, latest: readonly number[], serving: number): readonly number[] {
  const leeway = problem.acts.map(() => 0);
  for (const index of topological(problem).toReversed()) {
    const act = problem.acts[index];
    if (act === undefined || act.task.step.hold !== null || act.task.step.endsBeforeServing !== null)
      continue;
    const { ahead } = act.task.step;
    const end = (latest[index] ?? 0) + act.length;
    const keeps = ahead === null ? KEEPS_MS : end - serving + ahead * 1000;
    const bound = (problem.after[index] ?? []).map((arc) =>
      arc.atMost === null
        ? Infinity
        : (leeway[arc.to] ?? 0) + arc.atMost - Math.max(0, (latest[arc.to] ?? 0) - end),
    );
    leeway[index] = Math.max(0, Math.min(keeps, ...bound));
  }
  return leeway;
}

/** From when on an act is wanted: hot and wilting things late, the rest early. */
export function wantedFrom(
  problem: Problem,
  latest: readonly number[],
  serving: number,
  first: readonly number[],
) {
  const leeway = leeways(problem, latest, serving);
  return problem.acts.map((act, index) =>
    first.includes(index) ? act.release : Math.max(act.release, (latest[index] ?? 0) - (leeway[index] ?? 0)),
  );
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
