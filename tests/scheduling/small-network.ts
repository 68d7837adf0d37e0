import type { Network } from "../../core/plan/engine/network.ts";

/** A network of acts with these lengths, and what more is said; the rest asks for nothing. */
export function smallNetwork(lengths: readonly number[], more: Partial<Network> = {}): Network {
  return {
    lengths,
    earliest: lengths.map(() => 0),
    latest: lengths.map(() => Infinity),
    lags: [],
    capacities: [],
    uses: lengths.map(() => []),
    tending: lengths.map(() => []),
    ovens: [],
    bakings: lengths.map(() => []),
    ...more,
  };
}

/** One of a thing all the while. */
export const allOf = (thing: number, length: number) => ({ thing, amount: 1, from: 0, to: length });

/** An oven of two racks that heats 28 degrees a minute and cools 10. */
export const smallOven = (temperature: number | null) => ({ racks: 2, heats: 28, cools: 10, temperature });

/** On one rack of the first oven. */
export const bakeAt = (heat: number) => ({ oven: 0, heat, racks: 1 });

/** H. Fisher, G. L. Thompson 1963, in J. F. Muth, G. L. Thompson (eds.), Industrial Scheduling: 6 jobs, 6 machines. */
export const fisherThompson6 = `
6 6
2 1 0 3 1 6 3 7 5 3 4 6
1 8 2 5 4 10 5 10 0 10 3 4
2 5 3 4 5 8 0 9 1 1 4 7
1 5 0 5 2 5 3 3 4 8 5 9
2 9 1 3 4 5 5 4 0 3 3 1
1 3 3 3 5 9 0 10 4 4 2 1
`;
