import { endOfAll, type Network, type Timetable } from "../network.ts";
import { buildModel } from "./build-model.ts";
import type { Model } from "./model.ts";
import { Search } from "./search.ts";
import { timetableOf, valuesOf } from "./values.ts";

/** What is known of a network's shortest timetable. */
export interface Proof {
  /** "optimal": the timetable is a shortest one; "impossible": there is none; "unfinished": neither is proven. */
  readonly outcome: "optimal" | "impossible" | "unfinished";
  /** The best that is known; null where none is. */
  readonly timetable: Timetable | null;
  readonly conflicts: number;
  /** No timetable ends sooner than this. */
  readonly bound: number;
}

/** A proof that can be gone on with. */
export interface RunningProof {
  /**
   * Searches until so many more conflicts have been met, or until there is nothing left to find.
   * @param work or until so much was looked at: for callers who share time out without a clock
   */
  run(conflicts: number, work?: number): Proof;
  /** Takes in a timetable found elsewhere; nothing changes if it is not better. */
  improve(timetable: Timetable): void;
}

class Prover implements RunningProof {
  readonly #network: Network;
  readonly #model: Model | null;
  readonly #search: Search | null;
  #best: Timetable | null;
  #isClosed = false;

  constructor(network: Network, known: Timetable | null, least: number) {
    this.#network = network;
    this.#best = known;
    this.#model = buildModel(network, known, least);
    this.#search = this.#model === null ? null : new Search(this.#model);
    this.#isClosed = this.#search === null;
    if (known !== null && this.#model !== null) this.#search?.hint(valuesOf(this.#model, known));
  }

  improve(timetable: Timetable): void {
    const end = endOfAll(this.#network, timetable.starts);
    if (this.#best !== null && endOfAll(this.#network, this.#best.starts) <= end) return;
    this.#best = timetable;
    if (this.#model === null) return;
    this.#search?.hint(valuesOf(this.#model, timetable));
    this.#search?.limit(end - 1);
  }

  run(conflicts: number, work = Infinity): Proof {
    const until = (this.#search?.conflicts ?? 0) + conflicts;
    const enough = (this.#search?.work ?? 0) + work;
    while (this.#search !== null && this.#model !== null && !this.#isClosed) {
      const finding = this.#search.run(until - this.#search.conflicts, enough - this.#search.work);
      if (finding === "paused") break;
      if (finding === "closed") this.#isClosed = true;
      else this.improve(timetableOf(this.#model, this.#search.values()));
    }
    return this.#proof();
  }

  #proof(): Proof {
    const timetable = this.#best;
    const conflicts = this.#search?.conflicts ?? 0;
    if (!this.#isClosed)
      return { outcome: "unfinished", timetable, conflicts, bound: this.#search?.least ?? 0 };
    if (timetable === null) return { outcome: "impossible", timetable, conflicts, bound: Infinity };
    return { outcome: "optimal", timetable, conflicts, bound: endOfAll(this.#network, timetable.starts) };
  }
}

/**
 * Begins to look for a network's shortest timetable, and for the proof that there is no shorter one.
 * @param known a timetable that keeps the network, or null; only shorter ones are then looked for
 * @param least no timetable ends before this; 0 where nothing is known. It is trusted
 */
export function beginProof(network: Network, known: Timetable | null, least: number): RunningProof {
  return new Prover(network, known, least);
}

/** How far to go: so many conflicts, and no further once `isOver` says so (asked every 64 conflicts). */
export interface ProofLimits {
  readonly conflicts: number;
  readonly known: Timetable | null;
  readonly isOver?: () => boolean;
}

/** Looks for a network's shortest timetable, and for the proof that there is no shorter one, within limits. */
export function prove(network: Network, limits: ProofLimits): Proof {
  const running = beginProof(network, limits.known, 0);
  let proof = running.run(0);
  while (proof.outcome === "unfinished" && proof.conflicts < limits.conflicts) {
    if (limits.isOver?.() === true) break;
    proof = running.run(Math.min(64, limits.conflicts - proof.conflicts));
  }
  return proof;
}
