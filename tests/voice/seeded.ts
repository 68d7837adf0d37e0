/** Chance that is the same each time: every draw follows from the seed alone. */
export type Chance = {
  /** At least 0, below 1, evenly spread. */
  readonly even: () => number;
  /** From `low` up to `high`, evenly spread. */
  readonly between: (low: number, high: number) => number;
  /** A whole number from 0 up to and without `count`. */
  readonly whole: (count: number) => number;
  /** Of a normal distribution with mean 0 and deviation 1. */
  readonly normal: () => number;
  /** One of a list; throws where the list is empty. */
  readonly pick: <T>(list: readonly T[]) => T;
};

/**
 * A small generator (sfc32 of C. Doty-Humphrey's PractRand, written from memory), its state spread from the seed by
 * a few multiplications so that neighbouring seeds have nothing in common.
 * @param seed any whole number; its lower 32 bits count
 */
export function createChance(seed: number): Chance {
  const even = createEven(seed);
  let spare: number | null = null;
  // Marsaglia's polar method: two normal values from each accepted pair.
  const normal = (): number => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const x = 2 * even() - 1;
      const y = 2 * even() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * scale;
      return x * scale;
    }
  };
  const whole = (count: number): number => Math.floor(even() * count);
  return {
    even,
    between: (low, high) => low + (high - low) * even(),
    whole,
    normal,
    pick: <T>(list: readonly T[]): T => {
      const picked = list[whole(list.length)];
      if (picked === undefined) throw new Error("There is nothing to pick from: the list is empty.");
      return picked;
    },
  };
}

function createEven(seed: number): () => number {
  let state = seed | 0;
  const spread = (): number => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  let a = spread();
  let b = spread();
  let c = spread();
  let counter = 1;
  return () => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 0x1_0000_0000;
  };
}
