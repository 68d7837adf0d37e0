import type { Board, Place } from "./board.ts";
import { earliest, emptyBoard, put, takeOff } from "./board.ts";
import type { Baking } from "./oven.ts";
import type { Act } from "./act.ts";
import type { Problem } from "./problem.ts";

/** A place for every act, by index. */
export type Schedule = readonly Place[];

/** How to go about it. */
export interface Rule {
  /** Where each act stands in the queue; low goes first. */
  readonly rank: readonly number[];
  /** How long to wait for an oven heat that other dishes share, in milliseconds. */
  readonly patience: number;
}

/** How often a block may be moved to meet its maximum lags before it is left as it is. */
const MOST_MOVES = 60;

interface Draft {
  readonly problem: Problem;
  readonly release: readonly number[];
  readonly board: Board;
  readonly places: (Place | null)[];
}

/** The block's acts so that each comes after those it waits for; by rank among equals. */
function inOrder(problem: Problem, block: readonly number[], rank: readonly number[]): readonly number[] {
  if (block.length === 1) return block;
  const left = [...block].sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0) || a - b);
  const ordered: number[] = [];
  while (left.length > 0) {
    const next = left.findIndex((index) =>
      (problem.before[index] ?? []).every((arc) => !left.includes(arc.from)),
    );
    ordered.push(...left.splice(Math.max(0, next), 1));
  }
  return ordered;
}

/** The running oven task stays where it is: in the oven whose heat suits it, at the heat that is set. */
function bakingNow(problem: Problem, act: Act): Baking | null {
  const { oven: use } = act;
  if (use === null || problem.ovens.length === 0) return null;
  const suits = problem.ovens.findIndex(
    (oven) => oven.set !== null && oven.set >= use.low && oven.set <= use.high,
  );
  const oven = Math.max(0, suits);
  return { oven, heat: problem.ovens[oven]?.set ?? use.low };
}

function begin(problem: Problem, patience: number, release: readonly number[]): Draft {
  const board = emptyBoard(problem, patience);
  const draft: Draft = { problem, release, board, places: problem.acts.map(() => null) };
  problem.acts.forEach((act, index) => {
    if (act.running === null) return;
    const place = { start: act.running.start, baking: bakingNow(problem, act) };
    draft.places[index] = place;
    put(board, index, place);
  });
  return draft;
}

/** The bounds that the acts already placed set for this one. `by` is whose maximum lag binds. */
function windowOf({ problem, places, release }: Draft, index: number) {
  let from = release[index] ?? 0;
  let to = Infinity;
  let by = -1;
  for (const arc of problem.before[index] ?? []) {
    const place = places[arc.from];
    if (place === null || place === undefined) continue;
    const end = place.start + (problem.acts[arc.from]?.length ?? 0);
    from = Math.max(from, end + arc.atLeast);
    if (arc.atMost === null || end + arc.atMost >= to) continue;
    to = end + arc.atMost;
    by = arc.from;
  }
  return { from, to, by };
}

/** Places a block; where a follower comes too late, what it follows is moved later and tried again. */
function placeBlock(draft: Draft, members: readonly number[]): void {
  const { board, places } = draft;
  const floor = new Map<number, number>();
  let moves = 0;
  for (let at = 0; at < members.length; at += 1) {
    const index = members[at] ?? 0;
    const { from, to, by } = windowOf(draft, index);
    const place = earliest(board, index, Math.max(from, floor.get(index) ?? -Infinity));
    const cause = place.start > to ? members.indexOf(by) : -1;
    if (cause >= 0 && cause < at && moves < MOST_MOVES) {
      moves += 1;
      floor.set(by, (places[by]?.start ?? 0) + place.start - to);
      const undone = members.slice(cause, at);
      takeOff(board, new Set(undone));
      undone.forEach((one) => (places[one] = null));
      at = cause - 1;
      continue;
    }
    places[index] = place;
    put(board, index, place);
  }
}

interface Waiting {
  readonly members: readonly number[];
  readonly rank: number;
}

function isFree({ problem, places }: Draft, members: readonly number[]): boolean {
  for (const index of members) {
    for (const arc of problem.before[index] ?? []) {
      if (places[arc.from] === null && !members.includes(arc.from)) return false;
    }
  }
  return true;
}

/**
 * Serial schedule generation: block after block, the lowest rank among those whose predecessors are placed,
 * each at its earliest place. Where blocks wait for each other, the lowest rank goes alone.
 * @param release the earliest start of each act, in milliseconds from now
 * @returns a place for each act; limits that could not be kept are simply missed, and told by the caller
 */
export function generate(problem: Problem, rule: Rule, release: readonly number[]): Schedule {
  const draft = begin(problem, rule.patience, release);
  const rankOf = (members: readonly number[]) => Math.min(...members.map((index) => rule.rank[index] ?? 0));
  let waiting: Waiting[] = problem.blocks.map((block) => ({
    members: inOrder(problem, block, rule.rank),
    rank: rankOf(block),
  }));
  waiting.sort((a, b) => a.rank - b.rank);
  while (waiting.length > 0) {
    const free = waiting.findIndex((block) => isFree(draft, block.members));
    if (free < 0 && waiting.some((block) => block.members.length > 1)) {
      // Two blocks that need each other's parts: give up keeping them whole.
      waiting = waiting.flatMap(({ members, rank }) => members.map((index) => ({ members: [index], rank })));
      continue;
    }
    placeBlock(draft, waiting.splice(Math.max(0, free), 1)[0]?.members ?? []);
  }
  return draft.places.map((place) => place ?? { start: 0, baking: null });
}
