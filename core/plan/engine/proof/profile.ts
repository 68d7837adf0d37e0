import { conditionValue, type Part } from "./model.ts";
import { sortBy } from "./sort-by.ts";
import { Because, type Trail } from "./trail.ts";

/** The parts of all resources, field by field, as propagation and learning read them. */
export class Parts {
  readonly resource: Int32Array;
  /** The node 2·variable; the odd one beside it is for the upper bound. */
  readonly node: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly amount: Int32Array;
  readonly condition: Int32Array;

  constructor(parts: readonly Part[]) {
    this.resource = Int32Array.from(parts, (part) => part.resource);
    this.node = Int32Array.from(parts, (part) => 2 * part.variable);
    this.from = Int32Array.from(parts, (part) => part.from);
    this.to = Int32Array.from(parts, (part) => part.to);
    this.amount = Int32Array.from(parts, (part) => part.amount);
    this.condition = Int32Array.from(parts, (part) => part.condition);
  }
}

/**
 * One resource over time. A part must run in [latest beginning, earliest end) wherever it starts; the sum of those
 * spans is the profile. Where it leaves too little, no other part can be, and where it is too high, nothing fits.
 */
export class Profile {
  readonly #trail: Trail;
  readonly #parts: Parts;
  readonly capacity: number;
  /** The parts of this resource. */
  readonly own: Int32Array;
  /** The same in order of their latest beginning, and of their earliest end; nearly in order from call to call. */
  readonly #byBegin: Int32Array;
  readonly #byFinish: Int32Array;
  /** By part: its sure span when the profile was made; empty if begin >= finish. */
  readonly begin: Int32Array;
  readonly finish: Int32Array;
  /** The profile: from starts[i] to starts[i + 1] the sum is heights[i]. */
  readonly starts: Int32Array;
  readonly heights: Int32Array;
  count = 0;
  #peak = 0;
  /** The moment at which too much is taken, after `propagate` said -1. */
  clash = 0;

  constructor(trail: Trail, parts: Parts, own: readonly number[], capacity: number) {
    this.#trail = trail;
    this.#parts = parts;
    this.capacity = capacity;
    this.own = Int32Array.from(own);
    this.#byBegin = Int32Array.from(own);
    this.#byFinish = Int32Array.from(own);
    this.begin = new Int32Array(parts.node.length);
    this.finish = new Int32Array(parts.node.length);
    this.starts = new Int32Array(2 * own.length + 2);
    this.heights = new Int32Array(2 * own.length + 2);
  }

  /** 1: nothing more follows; 0: a variable has no value left; -1: too much is taken at `clash`. */
  propagate(): number {
    if (!this.refresh()) return -1;
    const { condition, amount, node } = this.#parts;
    const { bound } = this.#trail;
    for (let index = 0; index < this.own.length; index += 1) {
      const part = this.own[index] ?? 0;
      if (this.#peak + (amount[part] ?? 0) <= this.capacity) continue;
      const switchNode = condition[part] ?? -1;
      if (switchNode >= 0 && (bound[switchNode] ?? 0) < conditionValue(switchNode)) {
        if ((bound[switchNode ^ 1] ?? 0) < conditionValue(switchNode ^ 1)) this.#exclude(part);
        continue;
      }
      const start = node[part] ?? 0;
      if ((bound[start] ?? 0) + (bound[start + 1] ?? 0) >= 0) continue;
      if (!this.#delay(part) || !this.#hasten(part)) return 0;
    }
    return 1;
  }

  /** Makes the profile anew; false where it is too high. */
  refresh(): boolean {
    this.#measure();
    return this.#build();
  }

  #measure(): void {
    const { node, from, to } = this.#parts;
    const { bound } = this.#trail;
    for (let index = 0; index < this.own.length; index += 1) {
      const part = this.own[index] ?? 0;
      const start = node[part] ?? 0;
      this.begin[part] = (from[part] ?? 0) - (bound[start + 1] ?? 0);
      this.finish[part] = (to[part] ?? 0) + (bound[start] ?? 0);
    }
    sortBy(this.#byBegin, this.own.length, this.begin);
    sortBy(this.#byFinish, this.own.length, this.finish);
  }

  #isSure(part: number): boolean {
    return (this.begin[part] ?? 0) < (this.finish[part] ?? 0) && this.isOn(part);
  }

  /** Whether it is certain that the part counts. */
  isOn(part: number): boolean {
    const node = this.#parts.condition[part] ?? -1;
    return node < 0 || (this.#trail.bound[node] ?? 0) >= conditionValue(node);
  }

  /** Makes the profile; false where it is too high. */
  #build(): boolean {
    const byBegin = this.#byBegin;
    const byFinish = this.#byFinish;
    const begin = this.begin;
    const finish = this.finish;
    const size = byBegin.length;
    let first = 0;
    let second = 0;
    let count = 0;
    let height = 0;
    let peak = 0;
    while (true) {
      while (first < size && !this.#isSure(byBegin[first] ?? 0)) first += 1;
      while (second < size && !this.#isSure(byFinish[second] ?? 0)) second += 1;
      if (second === size) break;
      const finishing = finish[byFinish[second] ?? 0] ?? 0;
      const beginning = first < size ? (begin[byBegin[first] ?? 0] ?? 0) : finishing;
      const isFinish = finishing <= beginning;
      const at = isFinish ? finishing : beginning;
      if (isFinish) height -= this.#parts.amount[byFinish[second++] ?? 0] ?? 0;
      else height += this.#parts.amount[byBegin[first++] ?? 0] ?? 0;
      if (count > 0 && this.starts[count - 1] === at) count -= 1;
      this.starts[count] = at;
      this.heights[count] = height;
      count += 1;
      if (height > peak) peak = height;
      if (height > this.capacity) {
        this.clash = at;
        return false;
      }
    }
    this.count = count;
    this.#peak = peak;
    return true;
  }

  /** The last stretch of the profile that starts at or before that time; -1 if none does. */
  #stretchAt(time: number): number {
    const starts = this.starts;
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= time) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  #isTaken(stretch: number, part: number, amount: number): boolean {
    if ((this.heights[stretch] ?? 0) + amount <= this.capacity) return false;
    const start = this.starts[stretch] ?? 0;
    // What is taken within a part's own sure span includes the part.
    return start < (this.begin[part] ?? 0) || start >= (this.finish[part] ?? 0);
  }

  /** Raises the lower bound past all that is taken, one moment at a time. */
  #delay(part: number): boolean {
    const node = this.#parts.node[part] ?? 0;
    const from = this.#parts.from[part] ?? 0;
    const to = this.#parts.to[part] ?? 0;
    const amount = this.#parts.amount[part] ?? 0;
    const { bound } = this.#trail;
    let lower = bound[node] ?? 0;
    for (let at = Math.max(0, this.#stretchAt(lower + from)); at < this.count - 1; at += 1) {
      if ((this.starts[at] ?? 0) >= lower + to) break;
      if (!this.#isTaken(at, part, amount)) continue;
      const end = this.starts[at + 1] ?? 0;
      while (lower + from < end) {
        const moment = Math.min(end, lower + to) - 1;
        lower = moment - from + 1;
        if (!this.#trail.raise(node, lower, part * 8 + Because.part, moment)) return false;
      }
    }
    return true;
  }

  /** Lowers the upper bound before all that is taken, one moment at a time. */
  #hasten(part: number): boolean {
    const node = (this.#parts.node[part] ?? 0) + 1;
    const from = this.#parts.from[part] ?? 0;
    const to = this.#parts.to[part] ?? 0;
    const amount = this.#parts.amount[part] ?? 0;
    const { bound } = this.#trail;
    let upper = -(bound[node] ?? 0);
    for (let at = Math.min(this.count - 2, this.#stretchAt(upper + to - 1)); at >= 0; at -= 1) {
      if ((this.starts[at + 1] ?? 0) <= upper + from) break;
      if (!this.#isTaken(at, part, amount)) continue;
      const start = this.starts[at] ?? 0;
      while (upper + to > start) {
        const moment = Math.max(start, upper + from);
        upper = moment - to;
        if (!this.#trail.raise(node, -upper, part * 8 + Because.part, moment)) return false;
      }
    }
    return true;
  }

  /** Rules out a part that would have to run where too little is left. */
  #exclude(part: number): void {
    const begin = this.begin[part] ?? 0;
    const finish = this.finish[part] ?? 0;
    if (begin >= finish) return;
    const amount = this.#parts.amount[part] ?? 0;
    for (let at = Math.max(0, this.#stretchAt(begin)); at < this.count - 1; at += 1) {
      const start = this.starts[at] ?? 0;
      if (start >= finish) return;
      if ((this.starts[at + 1] ?? 0) <= begin || (this.heights[at] ?? 0) + amount <= this.capacity) continue;
      const off = (this.#parts.condition[part] ?? 0) ^ 1;
      this.#trail.raise(off, conditionValue(off), part * 8 + Because.part, Math.max(start, begin));
      return;
    }
  }
}
