import type { Act, Arc } from "./act.ts";

/**
 * A follower that must come this soon is placed together with what it follows, as one block. Longer maximum
 * lags leave room for other work in between and are kept by starting late instead.
 */
const TIGHT_MS = 15 * 60_000;

/** Groups the acts that are tied by tight maximum lags; an act without ties is a group of its own. */
export function blocksOf(acts: readonly Act[], arcs: readonly Arc[]): readonly (readonly number[])[] {
  const up = acts.map((_, index) => index);
  const root = (index: number): number => {
    const parent = up[index] ?? index;
    return parent === index ? index : root(parent);
  };
  for (const arc of arcs) {
    if (arc.atMost === null || arc.atMost - arc.atLeast > TIGHT_MS) continue;
    if (acts[arc.from]?.running !== null || acts[arc.to]?.running !== null) continue;
    const [a, b] = [root(arc.from), root(arc.to)];
    up[Math.max(a, b)] = Math.min(a, b);
  }
  const members = acts.map((): number[] => []);
  acts.forEach((act, index) => {
    if (act.running === null) members[root(index)]?.push(index);
  });
  return members.filter((block) => block.length > 0);
}

/**
 * Who takes up what an act makes. A next batch takes up the pan, not the food, so the early batches wait for
 * those that take up the last.
 */
export function takersOf(
  acts: readonly Act[],
  after: readonly (readonly Arc[])[],
): readonly (readonly number[])[] {
  const own = acts.map((act, index) =>
    (after[index] ?? []).flatMap((arc) => (acts[arc.to]?.task.step === act.task.step ? [] : [arc.to])),
  );
  return acts.map((act, index) => {
    const mine = own[index] ?? [];
    if (mine.length > 0 || act.task.batch === null) return mine;
    return acts.flatMap((other, at) => (other.task.step === act.task.step ? (own[at] ?? []) : []));
  });
}
