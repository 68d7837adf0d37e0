import { topological } from "./limits.ts";
import type { Problem } from "./problem.ts";
import type { Rule } from "./generate.ts";

/** How long a dish may wait for an oven heat that others share: not at all, or up to twenty minutes. */
const PATIENCES_MS = [20 * 60_000, 0];
const SHUFFLES = 6;

/** For each act the time from its start to the end of all that waits for it, in milliseconds. */
export function tails(problem: Problem): readonly number[] {
  const tail = problem.acts.map((act) => act.length);
  for (const index of topological(problem).toReversed()) {
    for (const arc of problem.after[index] ?? []) {
      const through = (problem.acts[index]?.length ?? 0) + arc.atLeast + (tail[arc.to] ?? 0);
      tail[index] = Math.max(tail[index] ?? 0, through);
    }
  }
  return tail;
}

/** The positions of the acts when sorted by `value`, the smallest first; equal values keep their order. */
export function ranked(value: readonly number[]): readonly number[] {
  const order = value.map((_, index) => index).sort((a, b) => (value[a] ?? 0) - (value[b] ?? 0) || a - b);
  const rank = value.map(() => 0);
  order.forEach((index, position) => (rank[index] = position));
  return rank;
}

/** A fixed sequence of numbers in [0, 1): the same variants every time. Source: Lehmer's generator, 48271. */
function sequence(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/**
 * The orders to try, the plainest first: the longest way to the table, the longest unattended way (what runs
 * by itself goes on early), each dish first in turn, and a few fixed shuffles of the first.
 */
export function rules(problem: Problem): readonly Rule[] {
  const tail = tails(problem);
  const longest = tail.map((length) => -length);
  const unattended = tail.map((length, index) => {
    const act = problem.acts[index];
    return act === undefined ? 0 : -length - (act.length - (act.hands.to - act.hands.from));
  });
  const dishes = [...new Set(problem.acts.map((act) => act.task.dish.id))];
  const dishFirst = dishes.map((dish) =>
    tail.map((length, index) => -length * (problem.acts[index]?.task.dish.id === dish ? 1.5 : 1)),
  );
  const shuffled = Array.from({ length: SHUFFLES }, (_, index) => {
    const next = sequence(index + 1);
    return tail.map((length) => -length * (0.7 + 0.6 * next()));
  });
  const [shared, soon] = PATIENCES_MS.map((patience) => (value: readonly number[]): Rule => ({
    rank: ranked(value),
    patience,
  }));
  if (shared === undefined || soon === undefined) return [];
  return [
    ...[longest, unattended].map(shared),
    ...(problem.acts.some((act) => act.oven !== null) ? [longest, unattended].map(soon) : []),
    ...[...dishFirst, ...shuffled].map(shared),
  ];
}
