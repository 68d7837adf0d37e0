import type { Closure } from "./closure.ts";
import { addEdge, addVariable, type Draft } from "./model.ts";

/** Two spans that never overlap: `second >= first + after`, or `first >= second + before`; both are variables. */
export interface Apart {
  readonly first: number;
  readonly second: number;
  readonly after: number;
  readonly before: number;
}

/**
 * Keeps two spans apart: by nothing where their order is known already, by an edge where only one order is left, and
 * otherwise by a switch that tells the order (1: first before second). The same pair is entered only once.
 */
export class Pairs {
  readonly #draft: Draft;
  readonly #closure: Closure;
  readonly #seen = new Set<string>();

  constructor(draft: Draft, closure: Closure) {
    this.#draft = draft;
    this.#closure = closure;
  }

  #least(from: number, to: number): number {
    return this.#closure.least[from * this.#closure.size + to] ?? -Infinity;
  }

  /** Enters a pair that must always be apart. */
  keepApart(pair: Apart): void {
    const { first, second, after, before } = pair;
    if (first > second) {
      this.keepApart({ first: second, second: first, after: before, before: after });
      return;
    }
    const name = `${first} ${second} ${after} ${before}`;
    if (this.#seen.has(name)) return;
    this.#seen.add(name);
    const there = this.#least(first, second);
    const back = this.#least(second, first);
    if (there >= after || back >= before) return;
    if (back + after > 0) addEdge(this.#draft, second, first, before);
    else if (there + before > 0) addEdge(this.#draft, first, second, after);
    else this.keepApartIf(pair, [], addVariable(this.#draft, 0, 1));
  }

  /** Enters a pair that must be apart while the conditions hold; the order switch may serve several such pairs. */
  keepApartIf(pair: Apart, conditions: readonly number[], order: number): void {
    addEdge(this.#draft, pair.first, pair.second, pair.after, [...conditions, 2 * order]);
    addEdge(this.#draft, pair.second, pair.first, pair.before, [...conditions, 2 * order + 1]);
  }
}
