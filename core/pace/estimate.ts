/** Nothing is learnt from fewer. */
export const leastEvenings = 2;
export const leastSteps = 5;
/** The recipes' own figure weighs as much as so many steps. */
const recipeSteps = 5;
/** No cook is planned beyond these, whatever a log says. */
const bounds = { low: 0.5, high: 2.5 };

/** The middle of some figures; of an even number, between the two in the middle. NaN for none. */
function median(figures: readonly number[]): number {
  const sorted = figures.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}

/**
 * The Hodges-Lehmann estimate of where some figures lie: the median of the means of all pairs, each figure paired with
 * itself too. Nearly as sharp as the mean, and not moved far by fewer than three figures in ten, however wild.
 * Source: Hodges & Lehmann, Estimates of location based on rank tests, Annals of Mathematical Statistics 34 (1963).
 */
export function hodgesLehmann(figures: readonly number[]): number {
  return median(figures.flatMap((one, at) => figures.slice(at).map((other) => (one + other) / 2)));
}

/**
 * How much longer than the recipes say a cook takes, from the ratios of each evening; 1 until enough is known.
 * Each evening has one voice, and so have the recipes: the median of them all is not moved far by any one evening. What
 * few steps tell is drawn towards 1, by the credibility n / (n + k). On logarithms, so that twice as long and half as
 * long weigh the same. Source of the credibility: Bühlmann, Experience rating and credibility, ASTIN Bulletin 4 (1967).
 * @param evenings for each evening its ratios of taken to planned, above 0
 */
export function learntTimes(evenings: readonly (readonly number[])[]): number {
  const cooked = evenings.filter((ratios) => ratios.length > 0);
  const steps = cooked.reduce((sum, ratios) => sum + ratios.length, 0);
  if (cooked.length < leastEvenings || steps < leastSteps) return 1;
  const middle = median([0, ...cooked.map((ratios) => hodgesLehmann(ratios.map(Math.log)))]);
  const times = Math.exp((middle * steps) / (steps + recipeSteps));
  return Math.min(bounds.high, Math.max(bounds.low, Math.round(times * 100) / 100));
}
