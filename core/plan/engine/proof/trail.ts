import { longer } from "../longer.ts";

/** Who says that a bound holds: a number made of `kind` and what it is about. */
export const Because = {
  /** Chosen by the search. */
  choice: -1,
  nogood: 0,
  edge: 1,
  /** A conditional edge whose conditions all hold. */
  conditional: 2,
  /** A conditional edge that cannot hold, so one of its conditions does not. */
  refuted: 3,
  /** A part that found a moment (the detail) taken. */
  part: 4,
  /** A part for which a span of time (from the detail, to the extent) has too little left. */
  span: 5,
} as const;

const FIRST_ROOM = 1 << 11;

/** The bounds of all nodes, and every change to them since the root, with its reason: what learning reads. */
export class Trail {
  /** By node. */
  readonly bound: Int32Array<ArrayBuffer>;
  /** By node: its newest entry, or -1 where its bound is that of the root. */
  readonly last: Int32Array<ArrayBuffer>;
  /** By entry: the node, its bound after and before, the node's entry before this one, and the reason. */
  node = new Int32Array(FIRST_ROOM);
  after = new Int32Array(FIRST_ROOM);
  before = new Int32Array(FIRST_ROOM);
  earlier = new Int32Array(FIRST_ROOM);
  reason = new Int32Array(FIRST_ROOM);
  detail = new Int32Array(FIRST_ROOM);
  extent = new Int32Array(FIRST_ROOM);
  level = new Int32Array(FIRST_ROOM);
  size = 0;
  depth = 0;
  /** By depth - 1: the first entry of that depth. */
  #marks = new Int32Array(FIRST_ROOM);

  constructor(lower: readonly number[], upper: readonly number[]) {
    this.bound = new Int32Array(lower.length * 2);
    this.last = new Int32Array(lower.length * 2).fill(-1);
    lower.forEach((value, variable) => {
      this.bound[2 * variable] = value;
      this.bound[2 * variable + 1] = -(upper[variable] ?? 0);
    });
  }

  #grow(): void {
    this.node = longer(this.node);
    this.after = longer(this.after);
    this.before = longer(this.before);
    this.earlier = longer(this.earlier);
    this.reason = longer(this.reason);
    this.detail = longer(this.detail);
    this.extent = longer(this.extent);
    this.level = longer(this.level);
    this.#marks = longer(this.#marks);
  }

  /** Raises a bound (the caller has seen that it is lower); false if the variable has no value left. */
  raise(node: number, value: number, reason: number, detail = 0, extent = 0): boolean {
    const entry = this.size;
    if (entry === this.node.length) this.#grow();
    this.node[entry] = node;
    this.after[entry] = value;
    this.before[entry] = this.bound[node] ?? 0;
    this.earlier[entry] = this.last[node] ?? -1;
    this.reason[entry] = reason;
    this.detail[entry] = detail;
    this.extent[entry] = extent;
    this.level[entry] = this.depth;
    this.bound[node] = value;
    this.last[node] = entry;
    this.size = entry + 1;
    return value + (this.bound[node ^ 1] ?? 0) <= 0;
  }

  /** Opens a depth for the next choice. */
  deepen(): void {
    this.#marks[this.depth] = this.size;
    this.depth += 1;
  }

  /** Takes back whatever came after that depth. */
  backTo(depth: number): void {
    if (depth >= this.depth) return;
    const start = this.#marks[depth] ?? 0;
    for (let entry = this.size - 1; entry >= start; entry -= 1) {
      const node = this.node[entry] ?? 0;
      this.bound[node] = this.before[entry] ?? 0;
      this.last[node] = this.earlier[entry] ?? -1;
    }
    this.size = start;
    this.depth = depth;
  }

  /** At depth 0: what is known now is known for good and needs no reason any more. */
  settle(): void {
    for (let entry = 0; entry < this.size; entry += 1) this.last[this.node[entry] ?? 0] = -1;
    this.size = 0;
  }

  /** The bound that the node had just before that entry. */
  boundBefore(node: number, entry: number): number {
    let at = this.last[node] ?? -1;
    let value = this.bound[node] ?? 0;
    while (at >= entry) {
      value = this.before[at] ?? 0;
      at = this.earlier[at] ?? -1;
    }
    return value;
  }

  /** The entry that first made the (true) literal hold; -1 if it holds at the root. */
  entryOf(node: number, value: number): number {
    let at = this.last[node] ?? -1;
    while (at >= 0 && (this.before[at] ?? 0) >= value) at = this.earlier[at] ?? -1;
    return at;
  }
}
