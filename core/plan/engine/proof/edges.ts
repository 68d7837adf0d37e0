import { conditionValue, type Edge } from "./model.ts";
import { Because, type Trail } from "./trail.ts";

/** Rows of different length in one array: row i is [starts[i], starts[i + 1]). */
interface Rows {
  readonly starts: Int32Array;
  readonly entries: Int32Array;
}

function rowsOf(count: number, rowOf: readonly (readonly [row: number, entry: number])[]): Rows {
  const starts = new Int32Array(count + 1);
  for (const [row] of rowOf) starts[row + 1] = (starts[row + 1] ?? 0) + 1;
  for (let row = 0; row < count; row += 1) starts[row + 1] = (starts[row + 1] ?? 0) + (starts[row] ?? 0);
  const next = starts.slice();
  const entries = new Int32Array(rowOf.length);
  for (const [row, entry] of rowOf) {
    const at = next[row] ?? 0;
    entries[at] = entry;
    next[row] = at + 1;
  }
  return { starts, entries };
}

/**
 * Propagates `to >= from + least`. Each edge is kept twice, once for the lower bounds (from 2·from to 2·to) and once
 * for the upper ones (from 2·to + 1 to 2·from + 1): both raise the bound of the node they lead to.
 */
export class Edges {
  readonly #trail: Trail;
  readonly #free: Rows;
  readonly #bound: Rows;
  readonly #guarded: Rows;
  /** By arc: where it leads from and to, its length, and which conditions it has. */
  readonly tail: Int32Array;
  readonly head: Int32Array;
  readonly least: Int32Array;
  readonly conditions: Rows;

  constructor(trail: Trail, edges: readonly Edge[]) {
    this.#trail = trail;
    const nodes = trail.bound.length;
    this.tail = Int32Array.from(edges.flatMap((edge) => [2 * edge.from, 2 * edge.to + 1]));
    this.head = Int32Array.from(edges.flatMap((edge) => [2 * edge.to, 2 * edge.from + 1]));
    this.least = Int32Array.from(edges.flatMap((edge) => [edge.least, edge.least]));
    const arcs = edges.flatMap((edge, index) => [
      { arc: 2 * index, edge },
      { arc: 2 * index + 1, edge },
    ]);
    const own = arcs.flatMap(({ arc, edge }) => edge.conditions.map((node) => [arc, node] as const));
    this.conditions = rowsOf(arcs.length, own);
    const tails = arcs.map(({ arc, edge }) => [this.tail[arc] ?? 0, arc, edge.conditions.length] as const);
    const pick = (isFree: boolean) =>
      tails.filter(([, , count]) => (count === 0) === isFree).map(([tail, arc]) => [tail, arc] as const);
    this.#free = rowsOf(nodes, pick(true));
    this.#bound = rowsOf(nodes, pick(false));
    this.#guarded = rowsOf(
      nodes,
      own.map(([arc, node]) => [node, arc] as const),
    );
  }

  /** Tells the edges that this node's bound was raised; false at a contradiction. */
  onRaise(node: number): boolean {
    const { starts, entries } = this.#free;
    const { bound } = this.#trail;
    const end = starts[node + 1] ?? 0;
    const from = bound[node] ?? 0;
    for (let at = starts[node] ?? 0; at < end; at += 1) {
      const arc = entries[at] ?? 0;
      const head = this.head[arc] ?? 0;
      const value = from + (this.least[arc] ?? 0);
      if (value > (bound[head] ?? 0) && !this.#trail.raise(head, value, arc * 8 + Because.edge)) return false;
    }
    return this.#checkAll(this.#bound, node) && this.#checkAll(this.#guarded, node);
  }

  /** Looks at every conditional edge once, as the search does at the start. */
  checkEverything(): boolean {
    for (let node = 0; node < this.#trail.bound.length; node += 1) if (!this.onRaise(node)) return false;
    return true;
  }

  #checkAll(rows: Rows, node: number): boolean {
    const end = rows.starts[node + 1] ?? 0;
    for (let at = rows.starts[node] ?? 0; at < end; at += 1) {
      if (!this.#check(rows.entries[at] ?? 0)) return false;
    }
    return true;
  }

  /** A conditional edge holds, or rules out its last open condition, or says nothing yet. */
  #check(arc: number): boolean {
    const { bound } = this.#trail;
    const head = this.head[arc] ?? 0;
    const value = (bound[this.tail[arc] ?? 0] ?? 0) + (this.least[arc] ?? 0);
    if (value <= (bound[head] ?? 0)) return true;
    const { starts, entries } = this.conditions;
    const end = starts[arc + 1] ?? 0;
    let open = -1;
    for (let at = starts[arc] ?? 0; at < end; at += 1) {
      const node = entries[at] ?? 0;
      if ((bound[node] ?? 0) >= conditionValue(node)) continue;
      if (open >= 0 || (bound[node ^ 1] ?? 0) >= conditionValue(node ^ 1)) return true;
      open = node;
    }
    if (open < 0) return this.#trail.raise(head, value, arc * 8 + Because.conditional);
    if (value + (bound[head ^ 1] ?? 0) <= 0) return true;
    return this.#trail.raise(open ^ 1, conditionValue(open ^ 1), arc * 8 + Because.refuted);
  }
}
