import type { Board, Place } from "./board.ts";
import { earliest, emptyBoard, put, takeOff } from "./board.ts";
import type { Baking } from "./oven.ts";
import type { Act, Problem } from "./problem.ts";

/** A place for every act, by index. */
export type Schedule = readonly Place[];

/** Where each act stands in the queue (low goes first), and how long to wait for a shared oven heat (ms). */
export interface Rule {
  readonly rank: readonly number[];
  readonly patience: number;
}

/**
 * A follower that must come this soon is placed together with what it follows, as one block. Longer maximum
 * lags leave room for other work in between and are kept by starting late instead.
 */
const TIGHT_MS = 15 * 60_000;
/** How often a block may be moved to meet its maximum lags before it is left as it is. */
const MOST_MOVES = 60;

/** Which block each act belongs to: acts tied by tight maximum lags share one. */
function blocksOf(problem: Problem): readonly (readonly number[])[] {
  const block = problem.acts.map((_, index) => index);
  const root = (index: number): number => {
    const up = block[index] ?? index;
    return up === index ? index : root(up);
  };
  for (const arc of problem.before.flat()) {
    const isLoose = arc.atMost === null || arc.atMost - arc.atLeast > TIGHT_MS;
    if (isLoose || problem.acts[arc.from]?.running !== null || problem.acts[arc.to]?.running !== null)
      continue;
    const [a, b] = [root(arc.from), root(arc.to)];
    block[Math.max(a, b)] = Math.min(a, b);
  }
  const members = new Map<number, number[]>();
  problem.acts.forEach((act, index) => {
    if (act.running === null) members.set(root(index), [...(members.get(root(index)) ?? []), index]);
  });
  return [...members.values()];
}

/** The block's acts so that each comes after those it waits for; by rank among equals. */
function inOrder(problem: Problem, block: readonly number[], rank: readonly number[]): readonly number[] {
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

interface Draft {
  readonly board: Board;
  readonly places: (Place | null)[];
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

function begin(problem: Problem, patience: number): Draft {
  const draft: Draft = { board: emptyBoard(problem, patience), places: problem.acts.map(() => null) };
  problem.acts.forEach((act, index) => {
    if (act.running === null) return;
    const place = { start: act.running.start, baking: bakingNow(problem, act) };
    draft.places[index] = place;
    put(draft.board, index, place);
  });
  return draft;
}

/** The bounds that the acts already placed set for this one. `by` is whose maximum lag binds. */
function windowOf(problem: Problem, draft: Draft, index: number) {
  let from = problem.acts[index]?.release ?? 0;
  let to = Infinity;
  let by = -1;
  for (const arc of problem.before[index] ?? []) {
    const place = draft.places[arc.from];
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
function placeBlock(problem: Problem, draft: Draft, members: readonly number[]): void {
  const floor = new Map<number, number>();
  let moves = 0;
  for (let at = 0; at < members.length; at += 1) {
    const index = members[at] ?? 0;
    const { from, to, by } = windowOf(problem, draft, index);
    const place = earliest(draft.board, index, Math.max(from, floor.get(index) ?? -Infinity));
    const cause = members.indexOf(by);
    if (place.start > to && cause >= 0 && cause < at && moves < MOST_MOVES) {
      moves += 1;
      floor.set(by, (draft.places[by]?.start ?? 0) + place.start - to);
      const undone = members.slice(cause, at);
      takeOff(draft.board, new Set(undone));
      undone.forEach((one) => (draft.places[one] = null));
      at = cause - 1;
      continue;
    }
    draft.places[index] = place;
    put(draft.board, index, place);
  }
}

/**
 * Serial schedule generation: block after block, the lowest rank among those whose predecessors are placed,
 * each at its earliest place. Where blocks wait for each other, the lowest rank goes alone.
 * @returns a place for each act; limits that could not be kept are simply missed, and told by the caller
 */
export function generate(problem: Problem, rule: Rule): Schedule {
  const draft = begin(problem, rule.patience);
  const rankOf = (members: readonly number[]) => Math.min(...members.map((index) => rule.rank[index] ?? 0));
  const waiting = blocksOf(problem)
    .map((block) => ({ members: inOrder(problem, block, rule.rank), rank: rankOf(block) }))
    .sort((a, b) => a.rank - b.rank || (a.members[0] ?? 0) - (b.members[0] ?? 0));
  const isFree = (members: readonly number[]) =>
    members.every((index) =>
      (problem.before[index] ?? []).every(
        (arc) => draft.places[arc.from] !== null || members.includes(arc.from),
      ),
    );
  while (waiting.length > 0) {
    const next = waiting.findIndex((block) => isFree(block.members));
    if (next >= 0) {
      placeBlock(problem, draft, waiting.splice(next, 1)[0]?.members ?? []);
      continue;
    }
    // Two blocks that need each other's parts: give up keeping them whole.
    const singles = waiting.flatMap((block) =>
      block.members.map((index) => ({ members: [index], rank: block.rank })),
    );
    const free = singles.findIndex((block) => isFree(block.members));
    placeBlock(problem, draft, singles.splice(Math.max(0, free), 1)[0]?.members ?? []);
    waiting.splice(0, waiting.length, ...singles);
  }
  return draft.places.map((place) => place ?? { start: 0, baking: null });
}
