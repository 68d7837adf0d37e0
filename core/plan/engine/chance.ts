/** A sequence of numbers that looks like chance and is the same for the same seed. Source: Marsaglia's xorshift32. */
export class Chance {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.imul(seed, 0x9e3779b1) ^ 0x6d2b79f5) | 0 || 1;
  }

  /** In [0, 1). */
  next(): number {
    let { state } = this;
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    this.state = state;
    return (state >>> 0) / 2 ** 32;
  }

  /** A whole number in [0, count). */
  below(count: number): number {
    return Math.floor(this.next() * count);
  }
}
