import type { Closure } from "./closure.ts";
import { NEVER } from "./closure.ts";
import type { Network } from "./network.ts";

/** What one act has to do with others, in a row of typed arrays: entries `first[act]` to `first[act + 1]`. */
interface Rows {
  readonly first: Int32Array;
  readonly other: Int32Array;
  readonly gap: Int32Array;
}

/** What each act takes, in columns: entries `first[act]` to `first[act + 1]`. */
interface UseRows {
  readonly first: Int32Array;
  readonly thing: Int32Array;
  readonly amount: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** A network made ready for building schedules quickly. */
export interface Compiled {
  readonly network: Network;
  readonly acts: number;
  readonly lengths: Int32Array;
  /** The earliest and the latest start that lags alone leave, counted from time 0. */
  readonly heads: Int32Array;
  readonly latest: Int32Array;
  /** The least time from an act's start to the end of all. */
  readonly tails: Int32Array;
  /** `start >= start(other) + gap`, for others that may stand already. */
  readonly lower: Rows;
  /** `start <= start(other) - gap`, likewise: the maximum lags, however indirect. */
  readonly upper: Rows;
  readonly uses: UseRows;
  /** Acts that must have a place before this one gets its own. */
  readonly before: readonly Int32Array[];
  /** The end of all that no schedule can undercut. */
  readonly bound: number;
}

/** No latest start. Half of what 32 bits hold, so that sums stay inside. */
export const OPEN = 2 ** 29;

function rowsOf(acts: number, entries: (act: number) => readonly (readonly [number, number])[]): Rows {
  const rows = Array.from({ length: acts }, (_, act) => entries(act));
  const first = new Int32Array(acts + 1);
  rows.forEach((row, act) => (first[act + 1] = (first[act] ?? 0) + row.length));
  const all = rows.flat();
  return {
    first,
    other: Int32Array.from(all, ([other]) => other),
    gap: Int32Array.from(all, ([, gap]) => gap),
  };
}

function useRowsOf(uses: Network["uses"]): UseRows {
  const first = new Int32Array(uses.length + 1);
  uses.forEach((own, act) => (first[act + 1] = (first[act] ?? 0) + own.length));
  const all = uses.flat();
  return {
    first,
    thing: Int32Array.from(all, (use) => use.thing),
    amount: Int32Array.from(all, (use) => use.amount),
    from: Int32Array.from(all, (use) => use.from),
    to: Int32Array.from(all, (use) => use.to),
  };
}

/** Whether `one` must stand before `two` is placed: it starts earlier, or no later and not the other way round. */
function comesBefore({ acts, gaps }: Closure, one: number, two: number): boolean {
  const there = gaps[one * (acts + 1) + two] ?? NEVER;
  const back = gaps[two * (acts + 1) + one] ?? NEVER;
  return there > 0 || (there === 0 && (back < 0 || (back === 0 && one < two)));
}

/** The work that each thing must do, spread over all there are of it, with the least before and after. */
function workBound(network: Network, heads: Int32Array, tails: Int32Array): number {
  return network.capacities.reduce((bound, capacity, thing) => {
    let work = 0;
    let head = Infinity;
    let tail = Infinity;
    network.uses.forEach((uses, act) => {
      for (const use of uses) {
        if (use.thing !== thing) continue;
        work += use.amount * (use.to - use.from);
        head = Math.min(head, (heads[act] ?? 0) + use.from);
        tail = Math.min(tail, (tails[act] ?? 0) - use.to);
      }
    });
    return work === 0 ? bound : Math.max(bound, head + Math.ceil(work / capacity) + tail);
  }, 0);
}

/** Makes a network ready, given its longest ways. */
export function compile(network: Network, closure: Closure): Compiled {
  const { acts, gaps } = closure;
  const width = acts + 1;
  const gap = (from: number, to: number): number => gaps[from * width + to] ?? NEVER;
  const all = Array.from({ length: acts }, (_, act) => act);
  const lengths = Int32Array.from(network.lengths);
  const heads = Int32Array.from(all, (act) => gap(acts, act));
  const latest = Int32Array.from(all, (act) => (gap(act, acts) === NEVER ? OPEN : -gap(act, acts)));
  const tails = Int32Array.from(all, (act) =>
    all.reduce((tail, other) => Math.max(tail, gap(act, other) + (lengths[other] ?? 0)), 0),
  );
  const direct = all.map((): [number, number][] => []);
  for (const { from, to, least } of network.lags) if (least >= 0) direct[to]?.push([from, least]);
  const late = (act: number) =>
    all
      .filter((other) => other !== act && gap(act, other) !== NEVER && !comesBefore(closure, act, other))
      .map((other) => [other, gap(act, other)] as const);
  const early = (act: number) =>
    all
      .filter((other) => other !== act && gap(other, act) !== NEVER && !comesBefore(closure, other, act))
      .map((other) => [other, gap(other, act)] as const);
  const ways = heads.reduce((bound, head, act) => Math.max(bound, head + (tails[act] ?? 0)), 0);
  return {
    network,
    acts,
    lengths,
    heads,
    latest,
    tails,
    lower: rowsOf(acts, (act) => [...(direct[act] ?? []), ...early(act)]),
    upper: rowsOf(acts, late),
    uses: useRowsOf(network.uses),
    before: all.map((act) => Int32Array.from(all.filter((other) => comesBefore(closure, other, act)))),
    bound: Math.max(ways, workBound(network, heads, tails)),
  };
}
