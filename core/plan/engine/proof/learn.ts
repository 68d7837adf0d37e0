import type { Explainer } from "./explain.ts";
import { Literals } from "./literals.ts";
import type { Propagators } from "./propagators.ts";
import { Because, type Trail } from "./trail.ts";

const UNTOUCHED = 0;
const NEEDED = 1;
const RESOLVED = 2;

/** What is told of every variable that took part in a conflict. */
export interface Listener {
  bump(variable: number): void;
  /** A literal of the nogood. */
  learnt(node: number, value: number): void;
}

/**
 * From a conflict, by resolving backwards, to the first literal of the deepest choice through which all of it goes;
 * what remains is a nogood of bounds.
 */
export class Learner {
  readonly #trail: Trail;
  readonly #of: Propagators;
  readonly #explainer: Explainer;
  readonly #listener: Listener;
  /** By node: the bound that the conflict needs of it, the entry that made it hold, and whether it is still needed. */
  readonly #need: Int32Array;
  readonly #entry: Int32Array;
  readonly #state: Uint8Array;
  readonly #touched: Int32Array;
  #touchedCount = 0;
  #open = 0;
  #level = 0;
  readonly #levelSeen: Int32Array;
  #stamp = 0;
  /** The nogood: node, value, ...; the asserting literal first, the next deepest second. */
  readonly literals: Literals;
  /** The depth to which the search goes back; -1: there is no way out at all. */
  back = 0;
  /** At how many depths the literals came to hold. */
  depths = 0;

  constructor(of: Propagators, explainer: Explainer, listener: Listener) {
    this.#of = of;
    this.#trail = of.trail;
    this.#explainer = explainer;
    this.#listener = listener;
    const nodes = of.trail.bound.length;
    this.#need = new Int32Array(nodes);
    this.#entry = new Int32Array(nodes);
    this.#state = new Uint8Array(nodes);
    this.#touched = new Int32Array(nodes);
    this.literals = new Literals(nodes);
    this.#levelSeen = new Int32Array(nodes + 2);
  }

  /**
   * Learns from a conflict.
   * @param conflict true literals that contradict each other; the array may be the explainer's own
   * @param now the number of the conflict
   */
  learn(conflict: Literals, now: number): void {
    this.#clear();
    this.#level = this.#deepest(conflict);
    this.literals.count = 0;
    this.back = -1;
    if (this.#level === 0) return;
    for (let at = 0; at < conflict.count; at += 2) {
      this.#require(conflict.array[at] ?? 0, conflict.array[at + 1] ?? 0);
    }
    const unique = this.#resolve(now);
    this.#minimise(unique);
    this.#collect(unique);
  }

  #clear(): void {
    for (let index = 0; index < this.#touchedCount; index += 1)
      this.#state[this.#touched[index] ?? 0] = UNTOUCHED;
    this.#touchedCount = 0;
    this.#open = 0;
  }

  #deepest(conflict: Literals): number {
    let deepest = 0;
    for (let at = 0; at < conflict.count; at += 2) {
      const entry = this.#trail.entryOf(conflict.array[at] ?? 0, conflict.array[at + 1] ?? 0);
      if (entry >= 0) deepest = Math.max(deepest, this.#trail.level[entry] ?? 0);
    }
    return deepest;
  }

  #require(node: number, value: number): void {
    const isNeeded = this.#state[node] === NEEDED;
    if (isNeeded && (this.#need[node] ?? 0) >= value) return;
    const entry = this.#trail.entryOf(node, value);
    if (entry < 0) return;
    const isHere = (this.#trail.level[entry] ?? 0) === this.#level;
    if (isNeeded) {
      const wasHere = (this.#trail.level[this.#entry[node] ?? 0] ?? 0) === this.#level;
      if (isHere && !wasHere) this.#open += 1;
    } else {
      if (this.#state[node] === UNTOUCHED) this.#touch(node);
      this.#state[node] = NEEDED;
      if (isHere) this.#open += 1;
    }
    this.#need[node] = value;
    this.#entry[node] = entry;
  }

  #touch(node: number): void {
    this.#touched[this.#touchedCount] = node;
    this.#touchedCount += 1;
    this.#listener.bump(node >> 1);
  }

  /** Resolves until one literal of the deepest level is left; tells its node. */
  #resolve(now: number): number {
    const trail = this.#trail;
    for (let at = trail.size - 1; ; at -= 1) {
      const node = trail.node[at] ?? 0;
      if (this.#state[node] !== NEEDED || this.#entry[node] !== at) continue;
      if (this.#open === 1) return node;
      this.#state[node] = RESOLVED;
      this.#open -= 1;
      const reason = trail.reason[at] ?? 0;
      if ((reason & 7) === Because.nogood) this.#of.nogoods.touch(reason >> 3, now);
      this.#explainer.explain(at, this.#need[node] ?? 0);
      const { array, count } = this.#explainer.literals;
      for (let index = 0; index < count; index += 2) this.#require(array[index] ?? 0, array[index + 1] ?? 0);
    }
  }

  /** Leaves out what the rest implies. */
  #minimise(unique: number): void {
    for (let index = this.#touchedCount - 1; index >= 0; index -= 1) {
      const node = this.#touched[index] ?? 0;
      if (node === unique || this.#state[node] !== NEEDED) continue;
      const entry = this.#entry[node] ?? 0;
      if ((this.#trail.reason[entry] ?? -1) < 0) continue;
      if (this.#isImplied(entry, node)) this.#state[node] = RESOLVED;
    }
  }

  #isImplied(entry: number, node: number): boolean {
    this.#explainer.explain(entry, this.#need[node] ?? 0);
    const { array, count } = this.#explainer.literals;
    for (let at = 0; at < count; at += 2) {
      const other = array[at] ?? 0;
      const value = array[at + 1] ?? 0;
      const isThere = other !== node && this.#state[other] === NEEDED && (this.#need[other] ?? 0) >= value;
      if (!isThere && this.#trail.entryOf(other, value) >= 0) return false;
    }
    return true;
  }

  #add(node: number): void {
    this.literals.add(node, this.#need[node] ?? 0);
    this.#listener.learnt(node, this.#need[node] ?? 0);
  }

  /** Writes the nogood down, its deepest literal but one in the second place, as watching needs it. */
  #collect(unique: number): void {
    this.#add(unique);
    this.back = 0;
    this.depths = 1;
    this.#stamp += 1;
    for (let index = 0; index < this.#touchedCount; index += 1) {
      const node = this.#touched[index] ?? 0;
      if (node === unique || this.#state[node] !== NEEDED) continue;
      const level = this.#trail.level[this.#entry[node] ?? 0] ?? 0;
      if (this.#levelSeen[level] !== this.#stamp) this.depths += 1;
      this.#levelSeen[level] = this.#stamp;
      this.#add(node);
      if (level > this.back) {
        this.back = level;
        this.#swapIntoSecond();
      }
    }
  }

  #swapIntoSecond(): void {
    const { array, count } = this.literals;
    const node = array[2] ?? 0;
    const value = array[3] ?? 0;
    array[2] = array[count - 2] ?? 0;
    array[3] = array[count - 1] ?? 0;
    array[count - 2] = node;
    array[count - 1] = value;
  }
}
