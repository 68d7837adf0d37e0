import type { Act } from "./act.ts";
import type { Network } from "./engine/network.ts";
import type { Problem } from "./problem.ts";

/** Times of the engine are this many milliseconds: one, or a second for a meal of days (its numbers have 32 bits). */
export function unitOf({ acts, before }: Problem): number {
  const longest = acts.reduce((sum, act) => sum + act.length + Math.max(0, act.release, act.latest ?? 0), 0);
  const lags = before.flat().reduce((sum, arc) => sum + arc.atLeast, 0);
  return longest + lags > 2 ** 28 ? 1000 : 1;
}

const MINUTE_MS = 60_000;

/** The things of a network: the cook, then the pools. */
const COOK = 0;
const POOLS = 1;

function usesOf(act: Act, unit: number) {
  const length = lengthOf(act, unit);
  const to = Math.min(length, Math.ceil(act.hands.to / unit));
  const hands = { thing: COOK, amount: 1, from: Math.floor(act.hands.from / unit), to };
  const pools = act.pools.map(({ pool, amount }) => ({ thing: pool + POOLS, amount, from: 0, to: length }));
  return [hands, ...pools].filter((use) => use.from < use.to);
}

function lengthOf(act: Act, unit: number): number {
  if (act.running === null) return Math.ceil(act.length / unit);
  return Math.ceil(act.running.end / unit) - Math.floor(act.running.start / unit);
}

/**
 * The same problem for the engine. Moments of attention are left out: they move to free minutes afterwards.
 * @param unit milliseconds a unit of the engine's time
 */
export function networkOf(problem: Problem, unit: number): Network {
  const { acts } = problem;
  const lengths = acts.map((act) => lengthOf(act, unit));
  const start = (act: Act): number | null =>
    act.running === null ? null : Math.floor(act.running.start / unit);
  return {
    lengths,
    earliest: acts.map((act) => start(act) ?? Math.ceil(act.release / unit)),
    latest: acts.map((act) => start(act) ?? (act.latest === null ? Infinity : Math.floor(act.latest / unit))),
    lags: problem.before.flat().flatMap(({ from, to, atLeast, atMost }) => {
      if (acts[to]?.running !== null) return [];
      const length = lengths[from] ?? 0;
      const least = { from, to, least: length + Math.ceil(atLeast / unit) };
      return atMost === null
        ? [least]
        : [least, { from: to, to: from, least: -length - Math.ceil(atMost / unit) }];
    }),
    capacities: [1, ...problem.pools],
    uses: acts.map((act) => usesOf(act, unit)),
    tending: acts.map(() => []),
    ovens: problem.ovens.map(({ racks, heats, cools, temperature }) => {
      const units = MINUTE_MS / unit;
      return { racks, heats: heats / units, cools: cools / units, temperature };
    }),
    bakings: acts.map((act) =>
      act.bakings.map(({ oven, heat }) => ({ oven, heat, racks: act.oven?.racks ?? 1 })),
    ),
  };
}
