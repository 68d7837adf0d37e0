/** Chance that can be had again: the same seed gives the same draws. */
export class Chance {
  private state: number;

  constructor(seed: number) {
    // Neighbouring seeds must not begin alike, so their bits are mixed first.
    let mixed = Math.imul(seed + 1, 0x9e3779b1);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b);
    this.state = (mixed ^ (mixed >>> 13)) >>> 0;
  }

  /** A whole number, both ends possible. */
  between(low: number, high: number): number {
    // A linear congruential row (Numerical Recipes' constants); its low bits are poor, so they are cut off.
    this.state = (Math.imul(this.state, 1664525) + 1013904223) >>> 0;
    return low + Math.floor(((this.state >>> 8) / 2 ** 24) * (high - low + 1));
  }

  pick<T>(items: readonly [T, ...T[]]): T {
    return items[this.between(0, items.length - 1)] ?? items[0];
  }

  /** True about `times` in `of` times. */
  isLucky(times: number, of: number): boolean {
    return this.between(1, of) <= times;
  }
}
