import type { Act, Arc } from "./act.ts";
import type { Lag, Network, Use } from "./engine/network.ts";
import type { Problem } from "./problem.ts";

const MINUTE_MS = 60_000;
/** A meal that may take longer than this (three days) is planned by the second: the engine's numbers have 32 bits. */
const LONG_MS = 2 ** 28;

/** The hands are the first thing of the network, the pools follow. */
const HANDS = 0;
const POOLS = 1;

/** The engine's unit of time, in milliseconds. */
export function unitOf({ acts, before }: Problem): number {
  const lengths = acts.reduce((sum, act) => sum + act.length, 0);
  const rests = before.flat().reduce((sum, arc) => sum + arc.atLeast, 0);
  const release = acts.reduce((last, act) => Math.max(last, act.release), 0);
  return release + lengths + rests > LONG_MS ? 1000 : 1;
}

function lengthOf(act: Act, unit: number): number {
  if (act.running === null) return Math.ceil(act.length / unit);
  return Math.ceil(act.running.end / unit) - Math.floor(act.running.start / unit);
}

function usesOf(act: Act, length: number, unit: number): readonly Use[] {
  const to = Math.min(length, Math.ceil(act.hands.to / unit));
  const hands = { thing: HANDS, amount: 1, from: Math.floor(act.hands.from / unit), to };
  const pools = act.pools.map(({ pool, amount }) => ({ thing: POOLS + pool, amount, from: 0, to: length }));
  return [hands, ...pools].filter((use) => use.from < use.to);
}

/**
 * What runs began before now, and what it waited for cannot bind it any more; how late its followers may begin may be
 * past already, so that is for the judge of a plan to weigh.
 */
function lagsOf({ from, to, atLeast, atMost }: Arc, acts: readonly Act[], length: number, unit: number) {
  if (acts[to]?.running !== null) return [];
  const lags: Lag[] = [{ from, to, least: length + Math.ceil(atLeast / unit) }];
  if (atMost !== null && acts[from]?.running === null)
    lags.push({ from: to, to: from, least: -length - Math.ceil(atMost / unit) });
  return lags;
}

/**
 * The problem for the engine. Moments of attention are left out: they move to free minutes afterwards.
 * @param unit milliseconds a unit of the engine's time
 */
export function networkOf(problem: Problem, unit: number): Network {
  const { acts } = problem;
  const lengths = acts.map((act) => lengthOf(act, unit));
  const begun = acts.map((act) => (act.running === null ? null : Math.floor(act.running.start / unit)));
  return {
    lengths,
    earliest: acts.map((act, index) => begun[index] ?? Math.ceil(act.release / unit)),
    latest: begun.map((start) => start ?? Infinity),
    lags: problem.before.flat().flatMap((arc) => lagsOf(arc, acts, lengths[arc.from] ?? 0, unit)),
    capacities: [problem.cooks, ...problem.pools],
    uses: acts.map((act, index) => usesOf(act, lengths[index] ?? 0, unit)),
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
