import type { Network } from "./network.ts";

/** No path from the one to the other. Far from the limits of 32 bits, so that sums of two stay inside. */
export const NEVER = -(2 ** 29);

/**
 * The longest ways between all acts: `gaps[from * (acts + 1) + to]` is the least time from the start of `from` to the
 * start of `to`, NEVER where nothing is said. The row and the column `acts` stand for time 0.
 */
export interface Closure {
  readonly acts: number;
  readonly gaps: Int32Array;
}

/** Limits that contradict one another: each must start after the next, by more than there is room for. */
export interface Contradiction {
  /** The acts of the circle, in its order; `acts` stands for time 0. */
  readonly circle: readonly number[];
}

function directGaps(network: Network): Int32Array {
  const acts = network.lengths.length;
  const width = acts + 1;
  const gaps = new Int32Array(width * width).fill(NEVER);
  const raise = (from: number, to: number, least: number): void => {
    const at = from * width + to;
    if (least > (gaps[at] ?? NEVER)) gaps[at] = least;
  };
  for (let act = 0; act <= acts; act += 1) raise(act, act, 0);
  for (let act = 0; act < acts; act += 1) {
    raise(acts, act, network.earliest[act] ?? 0);
    const latest = network.latest[act] ?? Infinity;
    if (latest < Infinity) raise(act, acts, -latest);
  }
  for (const { from, to, least } of network.lags) raise(from, to, least);
  return gaps;
}

/** All ways over `via`, and for a longer way the first act on it, so that a circle can be told. */
function widen(gaps: Int32Array, next: Int32Array, width: number, via: number): void {
  const through = via * width;
  for (let from = 0; from < width; from += 1) {
    const row = from * width;
    const first = gaps[row + via] ?? NEVER;
    if (first === NEVER || from === via) continue;
    for (let to = 0; to < width; to += 1) {
      const second = gaps[through + to] ?? NEVER;
      if (second === NEVER) continue;
      const way = first + second;
      if (way <= (gaps[row + to] ?? NEVER)) continue;
      gaps[row + to] = way;
      next[row + to] = next[row + via] ?? via;
    }
  }
}

function circleFrom(act: number, next: Int32Array, width: number): readonly number[] {
  const circle = [act];
  for (let at = next[act * width + act] ?? act; at !== act && circle.length <= width;) {
    circle.push(at);
    at = next[at * width + act] ?? act;
  }
  return circle;
}

/**
 * The longest ways between all acts (Floyd and Warshall's method, cubic in the acts; rows without a way are skipped).
 * @returns the contradiction where a circle of limits asks an act to start after itself
 */
export function closureOf(network: Network): Closure | Contradiction {
  const gaps = directGaps(network);
  const acts = network.lengths.length;
  const width = acts + 1;
  const next = new Int32Array(width * width);
  for (let at = 0; at < next.length; at += 1) next[at] = at % width;
  for (let via = 0; via < width; via += 1) {
    widen(gaps, next, width, via);
    for (let act = 0; act < width; act += 1)
      if ((gaps[act * width + act] ?? 0) > 0) return { circle: circleFrom(act, next, width) };
  }
  return { acts, gaps };
}
