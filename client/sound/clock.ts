/** Time as the sound layer sees it; handed in, so that a test turns it by hand. */
export interface Clock {
  /** Epoch milliseconds. */
  readonly now: () => number;
  /** @returns a function that calls it off */
  readonly after: (ms: number, then: () => void) => () => void;
}

/** The page's (or worker's) own clock. */
export const systemClock: Clock = {
  now: () => Date.now(),
  after: (ms, then) => {
    const timer = setTimeout(then, ms);
    return () => {
      clearTimeout(timer);
    };
  },
};
