import { longer } from "../longer.ts";
import { Because, type Trail } from "./trail.ts";

/** In the store: size, number of depths, when it was last of use; then its literals, node and value by turns. */
const HEAD = 3;
const FIRST_ROOM = 1 << 12;

/**
 * Sets of literals of which at least one must be false: what was given and what was learnt. Each nogood watches two
 * literals that are not true; a node's list holds, for each nogood that watches one of its literals, the value that
 * is waited for and where the nogood is, so most of a list is passed over by one comparison each.
 */
export class Nogoods {
  readonly #trail: Trail;
  readonly #lists: Int32Array<ArrayBuffer>[];
  readonly #counts: Int32Array;
  store = new Int32Array(FIRST_ROOM);
  #used = 0;
  #given = 0;
  /** How many were learnt and are still there. */
  learnt = 0;

  constructor(trail: Trail) {
    this.#trail = trail;
    this.#lists = Array.from(trail.bound, () => new Int32Array(16));
    this.#counts = new Int32Array(trail.bound.length);
  }

  #watch(node: number, value: number, nogood: number): void {
    const count = this.#counts[node] ?? 0;
    let list = this.#lists[node];
    if (list === undefined) return;
    if (count + 2 > list.length) this.#lists[node] = list = longer(list, 16);
    list[count] = value;
    list[count + 1] = nogood;
    this.#counts[node] = count + 2;
  }

  #watchBoth(nogood: number): void {
    const at = nogood + HEAD;
    this.#watch(this.store[at] ?? 0, this.store[at + 1] ?? 0, nogood);
    this.#watch(this.store[at + 2] ?? 0, this.store[at + 3] ?? 0, nogood);
  }

  /**
   * Adds a nogood of at least two literals, the first two of which are to be watched.
   * @param literals node, value, node, value, ...; `count` of these numbers count
   * @returns its name, for `Because.nogood`
   */
  add(literals: ArrayLike<number>, count: number, depths: number, now: number): number {
    const nogood = this.#used;
    const end = nogood + HEAD + count;
    if (end > this.store.length) this.store = longer(this.store, end);
    this.store[nogood] = count;
    this.store[nogood + 1] = depths;
    this.store[nogood + 2] = now;
    for (let index = 0; index < count; index += 1) this.store[nogood + HEAD + index] = literals[index] ?? 0;
    this.#used = end;
    this.learnt += 1;
    this.#watchBoth(nogood);
    return nogood;
  }

  /** Marks all that is there as given: it is never forgotten. */
  keepAll(): void {
    this.#given = this.#used;
    this.learnt = 0;
  }

  /** Where the literals of a nogood begin and end in the store. */
  begin(nogood: number): number {
    return nogood + HEAD;
  }

  /** See `begin`. */
  end(nogood: number): number {
    return nogood + HEAD + (this.store[nogood] ?? 0);
  }

  /** Notes that a nogood took part in a conflict. */
  touch(nogood: number, now: number): void {
    this.store[nogood + 2] = now;
  }

  /** Tells the nogoods that this node's bound was raised from `before` to `after`; false at a contradiction. */
  onRaise(node: number, before: number, after: number): boolean {
    const list = this.#lists[node];
    if (list === undefined) return true;
    let count = this.#counts[node] ?? 0;
    for (let at = 0; at < count; at += 2) {
      const value = list[at] ?? 0;
      if (value > after || value <= before) continue;
      const nogood = list[at + 1] ?? 0;
      const outcome = this.#visit(nogood, node);
      if (outcome === 0) continue;
      if (outcome < 0) return false;
      count -= 2;
      list[at] = list[count] ?? 0;
      list[at + 1] = list[count + 1] ?? 0;
      this.#counts[node] = count;
      at -= 2;
    }
    return true;
  }

  /** 1: it now watches something else; 0: it goes on watching this node; -1: a contradiction. */
  #visit(nogood: number, node: number): number {
    const { store } = this;
    const { bound } = this.#trail;
    const first = nogood + HEAD;
    if (store[first] === node) this.#swap(first, first + 2);
    const other = store[first] ?? 0;
    const opposite = 1 - (store[first + 1] ?? 0);
    if ((bound[other ^ 1] ?? 0) >= opposite) return 0;
    const end = first + (store[nogood] ?? 0);
    for (let at = first + 4; at < end; at += 2) {
      const next = store[at] ?? 0;
      const value = store[at + 1] ?? 0;
      if ((bound[next] ?? 0) >= value) continue;
      this.#swap(first + 2, at);
      this.#watch(next, value, nogood);
      return 1;
    }
    return this.#trail.raise(other ^ 1, opposite, nogood * 8 + Because.nogood) ? 0 : -1;
  }

  #swap(one: number, other: number): void {
    const { store } = this;
    const node = store[one] ?? 0;
    const value = store[one + 1] ?? 0;
    store[one] = store[other] ?? 0;
    store[one + 1] = store[other + 1] ?? 0;
    store[other] = node;
    store[other + 1] = value;
  }

  /** At the root: forgets the half of what was learnt that is wide and long unused, and what can never matter again. */
  reduce(): void {
    const worth: number[] = [];
    for (let at = this.#given; at < this.#used; at = this.end(at)) {
      if ((this.store[at + 1] ?? 0) > 2) worth.push(this.#worth(at));
    }
    worth.sort((a, b) => b - a);
    const least = worth[worth.length >> 1] ?? 0;
    this.#counts.fill(0);
    let to = this.#given;
    for (let at = 0; at < this.#given; at = this.end(at)) this.#watchBoth(at);
    this.learnt = 0;
    for (let at = this.#given; at < this.#used;) {
      const end = this.end(at);
      const isKept = ((this.store[at + 1] ?? 0) <= 2 || this.#worth(at) > least) && !this.#isIdle(at);
      if (isKept) {
        this.store.copyWithin(to, at, end);
        this.#watchBoth(to);
        this.learnt += 1;
        to += end - at;
      }
      at = end;
    }
    this.#used = to;
  }

  /** Newer first; each depth less counts like so many conflicts more. */
  #worth(nogood: number): number {
    return (this.store[nogood + 2] ?? 0) - 300 * (this.store[nogood + 1] ?? 0);
  }

  /** Whether one of its literals is false for good. */
  #isIdle(nogood: number): boolean {
    const end = this.end(nogood);
    for (let at = nogood + HEAD; at < end; at += 2) {
      const opposite = 1 - (this.store[at + 1] ?? 0);
      if ((this.#trail.bound[(this.store[at] ?? 0) ^ 1] ?? 0) >= opposite) return true;
    }
    return false;
  }
}
