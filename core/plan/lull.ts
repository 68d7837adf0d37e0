import { minutes } from "../units/quantity.ts";
import type { Act, Arc } from "./act.ts";

/** A lull is wished for in whole minutes: from one to an hour before serving. */
export const leastLull = minutes(1);
export const mostLull = minutes(60);

/** Some acts and what binds them to each other; see Problem. */
interface Bound {
  readonly acts: readonly Act[];
  readonly before: readonly (readonly Arc[])[];
  readonly after: readonly (readonly Arc[])[];
  readonly takers: readonly (readonly number[])[];
}

/** How long before the table an act may end at most, as far as this depends on the acts round it; milliseconds. */
function reachOf({ acts, before, after, takers }: Bound, index: number, reaches: readonly number[]): number {
  const act = acts[index];
  if (act === undefined) return Infinity;
  const { endsBeforeServing, hold } = act.task.step;
  const startOf = (other: number): number => (reaches[other] ?? 0) + (acts[other]?.length ?? 0);
  const mine = takers[index] ?? [];
  const waits = mine.length === 0 ? [0] : mine.map(startOf);
  return Math.min(
    endsBeforeServing === null ? Infinity : endsBeforeServing * 1000,
    ...(hold === null ? [] : waits.map((wait) => wait + hold * 1000)),
    ...(after[index] ?? []).flatMap(({ to, atMost }) => (atMost === null ? [] : [startOf(to) + atMost])),
    ...(before[index] ?? []).map(({ from, atLeast }) => (reaches[from] ?? 0) - atLeast - act.length),
  );
}

/** How long before the table each act may have ended at most, in milliseconds; Infinity: nothing holds it there. */
export function reachesOf(bound: Bound): readonly number[] {
  let reaches: readonly number[] = bound.acts.map(() => Infinity);
  // Each round carries a limit one act further; limits that contradict each other would be carried on for ever.
  for (let round = 0; round <= bound.acts.length; round += 1) {
    const known = reaches;
    const next = known.map((reach, index) => Math.min(reach, reachOf(bound, index, known)));
    if (next.every((reach, index) => reach === known[index])) break;
    reaches = next;
  }
  return reaches;
}

/**
 * Which acts could be over before the lull: work by hand that nothing holds at the table. What its recipe wants fresh or
 * hot, what must follow such a step, and what such a step takes up soon stay where they are wanted.
 * @param lull how long before the table, in milliseconds
 */
export function leavers(bound: Bound, lull: number): readonly boolean[] {
  if (lull === 0) return bound.acts.map(() => false);
  const reaches = reachesOf(bound);
  return bound.acts.map(
    ({ task, running }, index) =>
      running === null && task.step.hands === "on" && (reaches[index] ?? 0) >= lull,
  );
}
