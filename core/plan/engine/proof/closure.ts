import type { Draft } from "./model.ts";

/** The least distance between any two times that follows from all unconditional edges and windows together. */
export interface Closure {
  readonly size: number;
  /** Row by row: `to >= from + least[from * size + to]`; -Infinity where nothing follows. */
  readonly least: Float64Array;
  /** A time would have to lie after itself. */
  readonly isContradictory: boolean;
}

// The closure costs the cube of the number of times: beyond this (0.1 s) only what is written counts as known.
const LARGEST = 400;

function written(draft: Draft, origin: number): Closure {
  const size = draft.lower.length;
  const least = new Float64Array(size * size).fill(-Infinity);
  const raise = (from: number, to: number, by: number) => {
    least[from * size + to] = Math.max(least[from * size + to] ?? -Infinity, by);
  };
  for (const edge of draft.edges) {
    if (edge.conditions.length === 0) raise(edge.from, edge.to, edge.least);
  }
  for (let time = 0; time < size; time += 1) {
    raise(origin, time, draft.lower[time] ?? 0);
    raise(time, origin, -(draft.upper[time] ?? 0));
  }
  return { size, least, isContradictory: false };
}

/** Longest paths between all times of the draft (switches must not be there yet). */
export function closureOf(draft: Draft, origin: number): Closure {
  const { size, least } = written(draft, origin);
  for (let via = 0; via < size && size <= LARGEST; via += 1) {
    for (let from = 0; from < size; from += 1) {
      const first = least[from * size + via] ?? -Infinity;
      if (first === -Infinity) continue;
      for (let to = 0; to < size; to += 1) {
        const sum = first + (least[via * size + to] ?? -Infinity);
        if (sum > (least[from * size + to] ?? -Infinity)) least[from * size + to] = sum;
      }
    }
  }
  let isContradictory = false;
  for (let time = 0; time < size; time += 1) {
    if ((least[time * size + time] ?? 0) > 0) isContradictory = true;
  }
  return { size, least, isContradictory };
}
