import type { Parts, Profile } from "./profile.ts";
import { sortBy } from "./sort-by.ts";
import { Because, type Trail } from "./trail.ts";

/**
 * One resource over spans of time: what surely runs in a span may take no more of it than there is. A part that would
 * have to do too much of its work in a span starts later, or ends sooner. It sees what no single moment shows: that
 * three quarters of an hour of work do not fit into half an hour, in whatever order.
 */
export class Spans {
  readonly #trail: Trail;
  readonly #parts: Parts;
  readonly #profile: Profile;
  readonly #byStart: Int32Array;
  readonly #byEnd: Int32Array;
  /** By part: the earliest start and the latest end of its use, and the area of the profile before each of them. */
  readonly #start: Int32Array;
  readonly #end: Int32Array;
  readonly #areaAtStart: Float64Array;
  readonly #areaAtEnd: Float64Array;
  /** By part: what it takes beyond its sure span. */
  readonly #loose: Int32Array;
  #count = 0;
  /** The span that is too small, after `propagate` said -1. */
  clashBegin = 0;
  clashFinish = 0;

  constructor(trail: Trail, parts: Parts, profile: Profile) {
    this.#trail = trail;
    this.#parts = parts;
    this.#profile = profile;
    this.#byStart = Int32Array.from(profile.own);
    this.#byEnd = Int32Array.from(profile.own);
    const size = parts.node.length;
    this.#start = new Int32Array(size);
    this.#end = new Int32Array(size);
    this.#areaAtStart = new Float64Array(size);
    this.#areaAtEnd = new Float64Array(size);
    this.#loose = new Int32Array(size);
  }

  /** 1: nothing more follows; 0: a variable has no value left; -1: a span is too small. */
  propagate(): number {
    if (!this.#profile.refresh()) return 1;
    this.#measure();
    let last = Infinity;
    for (let index = 0; index < this.#count; index += 1) {
      const finish = this.#end[this.#byEnd[index] ?? 0] ?? 0;
      const outcome = finish === last ? 1 : this.#spansTo(finish);
      if (outcome <= 0) return outcome;
      last = finish;
    }
    last = Infinity;
    for (let index = 0; index < this.#count; index += 1) {
      const begin = this.#start[this.#byStart[index] ?? 0] ?? 0;
      const outcome = begin === last ? 1 : this.#spansFrom(begin);
      if (outcome <= 0) return outcome;
      last = begin;
    }
    return 1;
  }

  #measure(): void {
    const { own, begin, finish } = this.#profile;
    const { node, from, to, amount } = this.#parts;
    const { bound } = this.#trail;
    let count = 0;
    for (let index = 0; index < own.length; index += 1) {
      const part = own[index] ?? 0;
      const start = node[part] ?? 0;
      const [lower, upper] = [bound[start] ?? 0, -(bound[start + 1] ?? 0)];
      if (lower === upper || !this.#profile.isOn(part)) continue;
      this.#start[part] = lower + (from[part] ?? 0);
      this.#end[part] = upper + (to[part] ?? 0);
      const sure = Math.max(0, (finish[part] ?? 0) - (begin[part] ?? 0));
      this.#loose[part] = (amount[part] ?? 0) * ((to[part] ?? 0) - (from[part] ?? 0) - sure);
      this.#byStart[count] = part;
      this.#byEnd[count] = part;
      count += 1;
    }
    this.#count = count;
    sortBy(this.#byStart, count, this.#start);
    sortBy(this.#byEnd, count, this.#end);
    this.#measureArea(this.#byStart, this.#start, this.#areaAtStart);
    this.#measureArea(this.#byEnd, this.#end, this.#areaAtEnd);
  }

  #measureArea(order: Int32Array, times: Int32Array, areas: Float64Array): void {
    const { starts, heights, count } = this.#profile;
    let [stretch, area] = [0, 0];
    for (let index = 0; index < this.#count; index += 1) {
      const part = order[index] ?? 0;
      const time = times[part] ?? 0;
      while (stretch < count - 1 && (starts[stretch + 1] ?? 0) <= time) {
        area += (heights[stretch] ?? 0) * ((starts[stretch + 1] ?? 0) - (starts[stretch] ?? 0));
        stretch += 1;
      }
      const past = stretch < count ? Math.max(0, time - (starts[stretch] ?? 0)) : 0;
      areas[part] = area + past * (heights[stretch] ?? 0);
    }
  }

  /** How much of the part's sure span lies within the span. */
  #sureWithin(part: number, begin: number, finish: number): number {
    const from = Math.max(begin, this.#profile.begin[part] ?? 0);
    return Math.max(0, Math.min(finish, this.#profile.finish[part] ?? 0) - from);
  }

  /** Looks at all spans that end there, from the shortest on. */
  #spansTo(finish: number): number {
    const { amount, to, from } = this.#parts;
    const { capacity } = this.#profile;
    let loose = 0;
    let longest = -1;
    let wish = 0;
    let areaAtFinish = 0;
    for (let index = 0; index < this.#count; index += 1) {
      const part = this.#byEnd[index] ?? 0;
      if (this.#end[part] === finish) areaAtFinish = this.#areaAtEnd[part] ?? 0;
    }
    for (let index = this.#count - 1; index >= 0; index -= 1) {
      const part = this.#byStart[index] ?? 0;
      const begin = this.#start[part] ?? 0;
      if (begin >= finish) continue;
      if ((this.#end[part] ?? 0) <= finish) loose += this.#loose[part] ?? 0;
      else {
        const length = Math.min(finish - begin, (to[part] ?? 0) - (from[part] ?? 0));
        const own = (amount[part] ?? 0) * (length - this.#sureWithin(part, begin, finish));
        if (own > wish) {
          longest = part;
          wish = own;
        }
      }
      const left = capacity * (finish - begin) - (areaAtFinish - (this.#areaAtStart[part] ?? 0)) - loose;
      if (left < 0) return this.#clash(begin, finish);
      if (wish > left && !this.#delay(longest, left, begin, finish)) return 0;
    }
    return 1;
  }

  #clash(begin: number, finish: number): number {
    this.clashBegin = begin;
    this.clashFinish = finish;
    return -1;
  }

  #delay(part: number, left: number, begin: number, finish: number): boolean {
    const amount = this.#parts.amount[part] ?? 0;
    const inside = Math.floor(left / amount) + this.#sureWithin(part, begin, finish);
    const node = this.#parts.node[part] ?? 0;
    const value = finish - inside - (this.#parts.from[part] ?? 0);
    if (value <= (this.#trail.bound[node] ?? 0)) return true;
    return this.#trail.raise(node, value, part * 8 + Because.span, begin, finish);
  }

  /** Looks at all spans that begin there, from the shortest on. */
  #spansFrom(begin: number): number {
    const { amount, to, from } = this.#parts;
    const { capacity } = this.#profile;
    let loose = 0;
    let longest = -1;
    let wish = 0;
    let areaAtBegin = 0;
    for (let index = 0; index < this.#count; index += 1) {
      const part = this.#byStart[index] ?? 0;
      if (this.#start[part] === begin) areaAtBegin = this.#areaAtStart[part] ?? 0;
    }
    for (let index = 0; index < this.#count; index += 1) {
      const part = this.#byEnd[index] ?? 0;
      const finish = this.#end[part] ?? 0;
      if (finish <= begin) continue;
      if ((this.#start[part] ?? 0) >= begin) loose += this.#loose[part] ?? 0;
      else {
        const length = Math.min(finish - begin, (to[part] ?? 0) - (from[part] ?? 0));
        const own = (amount[part] ?? 0) * (length - this.#sureWithin(part, begin, finish));
        if (own > wish) {
          longest = part;
          wish = own;
        }
      }
      const left = capacity * (finish - begin) - ((this.#areaAtEnd[part] ?? 0) - areaAtBegin) - loose;
      if (left < 0) return this.#clash(begin, finish);
      if (wish > left && !this.#hasten(longest, left, begin, finish)) return 0;
    }
    return 1;
  }

  #hasten(part: number, left: number, begin: number, finish: number): boolean {
    const amount = this.#parts.amount[part] ?? 0;
    const inside = Math.floor(left / amount) + this.#sureWithin(part, begin, finish);
    const node = (this.#parts.node[part] ?? 0) + 1;
    const value = (this.#parts.to[part] ?? 0) - begin - inside;
    if (value <= (this.#trail.bound[node] ?? 0)) return true;
    return this.#trail.raise(node, value, part * 8 + Because.span, begin, finish);
  }
}
