import { changeOver, type Network } from "../network.ts";

/** The longest change-over of each oven between any two heats that it may be at. */
function longestChanges(network: Network): readonly number[] {
  return network.ovens.map((oven, index) => {
    const heats = network.bakings.flat().flatMap((baking) => (baking.oven === index ? [baking.heat] : []));
    if (oven.temperature !== null) heats.push(oven.temperature);
    const [low, high] = [Math.min(...heats), Math.max(...heats)];
    return heats.length === 0 ? 0 : Math.max(changeOver(oven, low, high), changeOver(oven, high, low));
  });
}

/**
 * An end that no best timetable needs to exceed: in a later one there would be a moment, after everything may have
 * started, at which nothing runs, no lag is counted and no oven changes, and all that follows could begin sooner.
 */
export function horizonOf(network: Network): number {
  const changes = longestChanges(network);
  const least = network.lengths.map((length) => Math.max(0, length));
  for (const lag of network.lags) least[lag.from] = Math.max(least[lag.from] ?? 0, lag.least);
  const own = least.map((most, act) => {
    const tending = (network.tending[act] ?? []).map((one) => one.to + one.length);
    const change = (network.bakings[act] ?? []).map((baking) => changes[baking.oven] ?? 0);
    return Math.max(most, ...tending) + Math.max(0, ...change);
  });
  const start = Math.max(0, ...network.earliest, ...changes);
  return own.reduce((sum, length) => sum + length, start);
}
