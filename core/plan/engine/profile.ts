import { longer } from "./longer.ts";

/** Before every moment that a plan knows of; its other end is the largest number there is. */
const ALWAYS = -(2 ** 30);

/**
 * How much of one thing is taken over time: stretch `k` lasts from `times[k]` to `times[k + 1]`, the last for ever.
 * Written for speed: it is asked for every act of every schedule.
 */
export class Profile {
  private times = new Int32Array(64);
  private levels = new Int32Array(64);
  private size = 1;

  private readonly capacity: number;

  constructor(capacity: number) {
    this.capacity = capacity;
    this.clear();
  }

  /** Nothing is taken any more. */
  clear(): void {
    this.size = 1;
    this.times[0] = ALWAYS;
    this.levels[0] = 0;
  }

  /** The first moment, at `from` or later, from which on `amount` more is free for `length`. */
  fit(amount: number, from: number, length: number): number {
    const { times, levels, size } = this;
    const most = this.capacity - amount;
    let start = from;
    for (let at = this.stretchAt(from); at < size - 1; at += 1) {
      const until = times[at + 1] ?? 0;
      if ((levels[at] ?? 0) > most) start = until;
      else if (until >= start + length) return start;
    }
    return start;
  }

  /** Takes so much more between the two moments; less than nothing gives it back. */
  take(amount: number, from: number, to: number): void {
    if (from >= to) return;
    const first = this.cut(from);
    const last = this.cut(to);
    for (let at = first; at < last; at += 1) this.levels[at] = (this.levels[at] ?? 0) + amount;
    this.join(last);
    this.join(first);
  }

  private stretchAt(moment: number): number {
    const { times } = this;
    let low = 0;
    let high = this.size - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((times[middle] ?? 0) <= moment) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** A stretch that begins at this moment; its place. */
  private cut(moment: number): number {
    const at = this.stretchAt(moment);
    if (this.times[at] === moment) return at;
    if (this.size === this.times.length) this.grow();
    const { times, levels } = this;
    for (let to = this.size; to > at + 1; to -= 1) {
      times[to] = times[to - 1] ?? 0;
      levels[to] = levels[to - 1] ?? 0;
    }
    times[at + 1] = moment;
    levels[at + 1] = levels[at] ?? 0;
    this.size += 1;
    return at + 1;
  }

  private join(at: number): void {
    if (at === 0 || at >= this.size || this.levels[at] !== this.levels[at - 1]) return;
    const { times, levels } = this;
    this.size -= 1;
    for (let to = at; to < this.size; to += 1) {
      times[to] = times[to + 1] ?? 0;
      levels[to] = levels[to + 1] ?? 0;
    }
  }

  private grow(): void {
    this.times = longer(this.times);
    this.levels = longer(this.levels);
  }
}
