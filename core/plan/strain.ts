import type { Act } from "./act.ts";
import type { Place, Schedule } from "./drafts.ts";
import type { Problem } from "./problem.ts";

/** How long an act takes where it lasts as long as it may. Work by hand is left as planned: the cook can hurry it. */
function longest({ length, running, task: { step } }: Act): number {
  const { low, high } = step.time;
  return step.hands === "on" || running !== null ? length : (length * 2 * high) / Math.max(1, low + high);
}

/** Whether one of the two must be over before the other begins: one thing that there is but once, one oven at two heats. */
function excludes({ pools }: Problem, one: Act, other: Act, here: Place, there: Place): boolean {
  const [mine, theirs] = [here.baking, there.baking];
  const isTurned = mine !== null && mine.oven === theirs?.oven && mine.heat !== theirs.heat;
  return (
    isTurned ||
    one.pools.some(({ pool }) => pools[pool] === 1 && other.pools.some((use) => use.pool === pool))
  );
}

/**
 * When all would be ready if what goes on by itself lasted as long as it may and nobody planned anew: the order of the
 * schedule is kept, and nothing begins before its time.
 */
export function strainedReady(problem: Problem, schedule: Schedule): number {
  const lines = problem.acts
    .flatMap((act, index) => {
      const place = schedule[index];
      return place === undefined ? [] : [{ act, index, place, end: 0 }];
    })
    .sort((a, b) => a.place.start - b.place.start);
  const ends = problem.acts.map(() => 0);
  const free = Array.from({ length: problem.cooks }, () => 0);
  lines.forEach((line, at) => {
    const { act, index, place } = line;
    let { start } = place;
    if (act.running === null) {
      const waits = (problem.before[index] ?? []).map(({ from, atLeast }) => (ends[from] ?? 0) + atLeast);
      const cook = free.indexOf(Math.min(...free));
      start = Math.max(start, free[cook] ?? 0, ...waits);
      for (const other of lines.slice(0, at)) {
        const isBefore = other.place.start + other.act.length <= place.start && other.end > start;
        if (isBefore && excludes(problem, act, other.act, place, other.place)) start = other.end;
      }
      free[cook] = start + act.hands.to;
    }
    line.end = start + longest(act);
    ends[index] = line.end;
  });
  return Math.max(0, ...ends);
}
