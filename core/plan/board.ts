import type { Baking } from "./oven.ts";
import { changeOver } from "./oven.ts";
import type { Act } from "./act.ts";
import type { Problem } from "./problem.ts";

interface Busy {
  readonly act: number;
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

interface Baked extends Busy {
  readonly heat: number;
}

/** Where one act stands; times in milliseconds from now. */
export interface Place {
  readonly start: number;
  readonly baking: Baking | null;
}

/** What is taken so far: the cook, the pools, the ovens. Changed in place, by one schedule only. */
export interface Board {
  readonly problem: Problem;
  readonly cook: Busy[];
  readonly pools: readonly Busy[][];
  readonly ovens: readonly Baked[][];
  /** How long to wait for a heat that other dishes can share, in milliseconds. */
  readonly patience: number;
}

/** An empty board. */
export function emptyBoard(problem: Problem, patience: number): Board {
  return {
    problem,
    cook: [],
    pools: problem.pools.map(() => []),
    ovens: problem.ovens.map(() => []),
    patience,
  };
}

/** The most of a thing that is taken at any one moment between the two; plain loops: this is the hot spot. */
function mostTaken(taken: readonly Busy[], from: number, to: number): number {
  let most = 0;
  for (const one of taken) {
    if (one.from >= to || one.to <= from) continue;
    const at = Math.max(from, one.from);
    let sum = 0;
    for (const other of taken) if (other.from <= at && other.to > at) sum += other.amount;
    most = Math.max(most, sum);
  }
  return most;
}

/** Null when `amount` more fits between the two moments, else the first moment at which that may change. */
function full(
  taken: readonly Busy[],
  count: number,
  amount: number,
  from: number,
  to: number,
): number | null {
  let sum = amount;
  let next = Infinity;
  for (const busy of taken) {
    if (busy.from >= to || busy.to <= from) continue;
    sum += busy.amount;
    next = Math.min(next, busy.to);
  }
  return sum <= count || mostTaken(taken, from, to) + amount <= count ? null : next;
}

/** Null when the oven can be at this heat between the two moments, else the next moment to try. */
function unready(board: Board, baking: Baking, racks: number, from: number, to: number): number | null {
  const oven = board.problem.ovens[baking.oven];
  const baked = board.ovens[baking.oven];
  if (oven === undefined || baked === undefined) return null;
  if (oven.temperature !== null) {
    const warm = changeOver(oven, oven.temperature, baking.heat);
    if (baked.every((one) => one.to > from) && from < warm) return warm;
  }
  for (const one of baked) {
    if (one.heat === baking.heat) continue;
    const free = one.to + changeOver(oven, one.heat, baking.heat);
    if (free > from && one.from - changeOver(oven, baking.heat, one.heat) < to) return free;
  }
  return full(baked, oven.racks, racks, from, to);
}

/** The next moment to try for an act that cannot start at `start`; null when it can. */
function clash(board: Board, act: Act, start: number, baking: Baking | null): number | null {
  const cook = full(board.cook, 1, 1, start + act.hands.from, start + act.hands.to);
  if (cook !== null) return cook - act.hands.from;
  for (const { pool, amount } of act.pools) {
    const next = full(
      board.pools[pool] ?? [],
      board.problem.pools[pool] ?? 1,
      amount,
      start,
      start + act.length,
    );
    if (next !== null) return next;
  }
  return baking === null ? null : unready(board, baking, act.oven?.racks ?? 1, start, start + act.length);
}

function firstStart(board: Board, act: Act, from: number, baking: Baking | null): number {
  let start = from;
  for (;;) {
    const next = clash(board, act, start, baking);
    if (next === null || next <= start) return start;
    start = next;
  }
}

/** How long a task rather waits for the heat that the dial is set to, in milliseconds. */
const KEPT_MS = 20 * 60_000;

function isSet({ problem }: Board, baking: Baking): boolean {
  const oven = problem.ovens[baking.oven];
  return oven !== undefined && oven.temperature !== null && oven.set === baking.heat;
}

/** The earliest place for an act at or after `from`; among ovens and heats see `patience`. */
export function earliest(board: Board, index: number, from: number): Place {
  const act = board.problem.acts[index];
  if (act === undefined) throw new Error(`no act ${index}`);
  if (act.bakings.length === 0) return { start: firstStart(board, act, from, null), baking: null };
  const places = act.bakings.map((baking) => ({ start: firstStart(board, act, from, baking), baking }));
  const soonest = Math.min(...places.map((place) => place.start));
  const near = places.filter((place) => place.start <= soonest + board.patience);
  // An oven that is on its way to a heat keeps it: a dial turned to and fro never gets hot.
  const kept = places.find((place) => isSet(board, place.baking) && place.start <= soonest + KEPT_MS);
  if (kept !== undefined) return kept;
  return near.reduce((best, place) => {
    const shared = place.baking.sharedBy - best.baking.sharedBy;
    return shared > 0 || (shared === 0 && place.start < best.start) ? place : best;
  });
}

/** Puts an act on the board. */
export function put(board: Board, index: number, place: Place): void {
  const act = board.problem.acts[index];
  if (act === undefined) return;
  const [start, end] = [place.start, place.start + act.length];
  board.cook.push({ act: index, from: start + act.hands.from, to: start + act.hands.to, amount: 1 });
  for (const { pool, amount } of act.pools)
    board.pools[pool]?.push({ act: index, from: start, to: end, amount });
  if (place.baking === null) return;
  const { oven, heat } = place.baking;
  board.ovens[oven]?.push({ act: index, from: start, to: end, amount: act.oven?.racks ?? 1, heat });
}

/** Takes acts off the board again. */
export function takeOff(board: Board, gone: ReadonlySet<number>): void {
  drop(board.cook, gone);
  board.pools.forEach((pool) => drop(pool, gone));
  board.ovens.forEach((oven) => drop(oven, gone));
}

function drop<B extends Busy>(list: B[], gone: ReadonlySet<number>): void {
  const kept = list.filter((busy) => !gone.has(busy.act));
  list.splice(0, list.length, ...kept);
}
