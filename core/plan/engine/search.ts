import { bothWays } from "./both-ways.ts";
import { closureOf } from "./closure.ts";
import type { Network, Timetable } from "./network.ts";
import { endOfAll } from "./network.ts";
import type { RunningProof } from "./proof/prove.ts";
import { beginProof } from "./proof/prove.ts";
import { Walk } from "./walk.ts";

/** How far a search may go. */
export interface Limits {
  readonly seed: number;
  /** The most schedules to build; a dead end that the proof meets counts as one. */
  readonly schedules: number;
  /** Asked now and then, for callers who have a clock; at least one schedule is built all the same. */
  readonly isOver?: () => boolean;
}

/** What came of a search. */
export interface Found {
  /** null: none that keeps all limits. */
  readonly timetable: Timetable | null;
  /** When the timetable ends; where there is none, when the best that misses a limit would. */
  readonly end: number;
  readonly schedules: number;
  /** "optimal": none ends sooner; "impossible": none keeps all limits. */
  readonly proven: "optimal" | "impossible" | "open";
}

/** How much work each does in its turn, about 5 ms: a step of the walk takes a third of a microsecond, of the proof half. */
const WALKING = 16_000;
const PROVING = 10_000;
/** The most schedules in a turn: those of a few acts are little work, and the proof is quickly done with these. */
const SCHEDULES_IN_TURN = 200;

/** A walk without a right timetable goes on for so much work a pair of acts at first: so long takes a proof to begin. */
const WORK_A_PAIR = 8;
/** So many turns may the proof take in vain before what the walk finds makes its turns shorter. */
const PATIENCE = 8;
const LEAST_SHARE = 1 / 8;

class Search {
  private readonly network: Network;
  private readonly limits: Limits;
  private readonly walk: Walk;
  private readonly bound: number;
  private proof: RunningProof | null = null;
  private deadEnds = 0;
  /** The parts of a turn that the walk and the proof take: half as much each time that the other found something. */
  private walks = 1;
  /** Turns of the proof since it found something. */
  private vain = 0;
  private proves = 1;
  private best: Timetable | null = null;
  private end = Infinity;
  private proven: Found["proven"] = "open";

  constructor(network: Network, limits: Limits, walk: Walk, bound: number) {
    this.network = network;
    this.limits = limits;
    this.walk = walk;
    this.bound = bound;
  }

  found(): Found {
    const atMost = WORK_A_PAIR * this.network.lengths.length ** 2;
    this.goOnWalking(WALKING);
    while (this.best === null && this.walk.work < atMost && !this.isOver()) this.goOnWalking(1);
    while (!this.isOver()) {
      this.goOnProving();
      if (!this.isOver()) this.goOnWalking(WALKING * this.walks);
    }
    const { best, end, proven, walk } = this;
    return { timetable: best, end: best === null ? walk.end : end, schedules: this.schedules(), proven };
  }

  private schedules(): number {
    return this.walk.schedules + this.deadEnds;
  }

  private isOver(): boolean {
    if (this.proven !== "open") return true;
    return this.schedules() >= this.limits.schedules || this.limits.isOver?.() === true;
  }

  private goOnWalking(work: number): void {
    const enough = this.walk.work + work;
    const most = this.walk.schedules + SCHEDULES_IN_TURN;
    do {
      this.walk.step();
      if (this.walk.timetable !== null && this.walk.end < this.end)
        this.keep(this.walk.timetable, this.walk.end);
    } while (this.walk.work < enough && this.walk.schedules < most && !this.isOver());
  }

  private keep(timetable: Timetable, end: number): void {
    this.best = timetable;
    this.end = end;
    this.walks = 1;
    if (this.vain >= PATIENCE) this.proves = Math.max(LEAST_SHARE, this.proves / 2);
    if (end <= this.bound) this.proven = "optimal";
    this.proof?.improve(timetable);
  }

  private goOnProving(): void {
    this.proof ??= beginProof(this.network, this.best, this.bound);
    const most = this.limits.schedules - this.schedules();
    const { outcome, timetable, conflicts } = this.proof.run(most, PROVING * this.proves);
    this.deadEnds = conflicts;
    this.vain += 1;
    if (timetable !== null && timetable !== this.best) {
      this.best = timetable;
      this.end = endOfAll(this.network, timetable.starts);
      this.walks = Math.max(LEAST_SHARE, this.walks / 2);
      this.proves = 1;
      this.vain = 0;
      this.walk.goOnFrom(timetable);
    }
    if (outcome !== "unfinished") this.proven = outcome;
  }
}

/**
 * Looks for a timetable that keeps all limits and ends as soon as possible: by a walk through schedules, which is
 * quick, and by a proof in turn with it, which knows when it is done. Each tells the other what it finds. The same for
 * the same seed and number of schedules.
 */
export function search(network: Network, limits: Limits): Found {
  const closure = closureOf(network);
  if ("circle" in closure) return { timetable: null, end: 0, schedules: 0, proven: "impossible" };
  const both = bothWays(network, closure);
  return new Search(network, limits, new Walk(both, limits.seed), both.there.compiled.bound).found();
}
