import type { Closure } from "./closure.ts";
import { NEVER } from "./closure.ts";
import type { Network } from "./network.ts";

/** Before every moment that a plan knows of, and far from the limits of 32 bits. */
const LONG_BEFORE = -(2 ** 28);

const isFixed = ({ earliest, latest }: Network, act: number): boolean => earliest[act] === latest[act];
const endOf = ({ earliest, lengths }: Network, act: number): number =>
  (earliest[act] ?? 0) + (lengths[act] ?? 0);

/**
 * The same network with time running backwards from 0: an act that runs from 3 to 5 runs from -5 to -3. Built with
 * releases of -end for all, its schedules pack everything as late before that end as it goes.
 */
export function mirrored(network: Network): Network {
  const length = (act: number): number => network.lengths[act] ?? 0;
  return {
    lengths: network.lengths,
    // Only what is bound to its moment stays there: how late the rest may be is for the caller to say.
    earliest: network.lengths.map((_, act) => (isFixed(network, act) ? -endOf(network, act) : LONG_BEFORE)),
    latest: network.lengths.map((_, act) => (isFixed(network, act) ? -endOf(network, act) : Infinity)),
    lags: network.lags.map(({ from, to, least }) => ({
      from: to,
      to: from,
      least: least + length(to) - length(from),
    })),
    capacities: network.capacities,
    uses: network.uses.map((uses, act) =>
      uses.map((use) => ({ ...use, from: length(act) - use.to, to: length(act) - use.from })),
    ),
    tending: network.tending.map((all, act) =>
      all.map((one) => ({
        ...one,
        from: length(act) - one.to - one.length,
        to: length(act) - one.from - one.length,
      })),
    ),
    ovens: network.ovens.map((oven) => ({
      ...oven,
      heats: oven.cools,
      cools: oven.heats,
      temperature: null,
    })),
    bakings: network.bakings,
  };
}

/** The longest ways of the mirrored network, from those of the network itself. */
export function mirroredClosure(network: Network, { acts, gaps }: Closure): Closure {
  const width = acts + 1;
  const turned = new Int32Array(width * width).fill(NEVER);
  for (let from = 0; from < acts; from += 1) {
    for (let to = 0; to < acts; to += 1) {
      const gap = gaps[to * width + from] ?? NEVER;
      if (gap === NEVER) continue;
      turned[from * width + to] = gap + (network.lengths[from] ?? 0) - (network.lengths[to] ?? 0);
    }
    turned[acts * width + from] = isFixed(network, from) ? -endOf(network, from) : LONG_BEFORE;
    if (isFixed(network, from)) turned[from * width + acts] = endOf(network, from);
  }
  turned[acts * width + acts] = 0;
  return { acts, gaps: turned };
}
