/**
 * A scheduling problem and nothing else: acts with lengths, lags between their starts, things of which there are only
 * so many, ovens that are at one heat at a time. It knows nothing of food. The literature calls it RCPSP/max
 * (resource-constrained project scheduling with minimum and maximum lags); ovens and tending are added to it.
 *
 * All times are whole numbers of one unit, whatever the caller chooses; an act runs in [start, start + length).
 */
export interface Network {
  /** How long each act takes; its index is the act's name everywhere. */
  readonly lengths: readonly number[];
  /** Not before this, by act. */
  readonly earliest: readonly number[];
  /** Not after this, by act; Infinity where nothing says so. */
  readonly latest: readonly number[];
  readonly lags: readonly Lag[];
  /** How many there are of each thing. */
  readonly capacities: readonly number[];
  /** What each act takes of them. */
  readonly uses: readonly (readonly Use[])[];
  /** When each act wants to be looked after while it runs. */
  readonly tending: readonly (readonly Tending[])[];
  readonly ovens: readonly OvenFacts[];
  /** How each act may bake, the likeliest first; empty where it needs no oven. Exactly one of them is chosen. */
  readonly bakings: readonly (readonly Baking[])[];
}

/** `start(to) >= start(from) + least`. A maximum lag of `m` from a to b is `{ from: b, to: a, least: -m }`. */
export interface Lag {
  readonly from: number;
  readonly to: number;
  readonly least: number;
}

/** So much of a thing, from and to counted from the act's start; `from < to`, within the act. */
export interface Use {
  readonly thing: number;
  readonly amount: number;
  readonly from: number;
  readonly to: number;
}

/** One of a thing for `length`, beginning anywhere in [start + from, start + to]. */
export interface Tending {
  readonly thing: number;
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

/** An oven; heats in degrees, rates in degrees a unit of time. */
export interface OvenFacts {
  readonly racks: number;
  readonly heats: number;
  readonly cools: number;
  /** How hot it is at time 0; null: it does not matter. */
  readonly temperature: number | null;
}

/** Where an act bakes, how hot, and on how many racks. Acts overlap in one oven only at one and the same heat. */
export interface Baking {
  readonly oven: number;
  readonly heat: number;
  readonly racks: number;
}

/** When each act starts, which of its bakings it takes (0 where it has none), and when it is tended. */
export interface Timetable {
  readonly starts: readonly number[];
  readonly bakings: readonly number[];
  readonly tended: readonly (readonly number[])[];
}

/** How long an oven takes from one heat to another, in whole units of time. */
export function changeOver(oven: OvenFacts, from: number, to: number): number {
  return Math.ceil(to >= from ? (to - from) / oven.heats : (from - to) / oven.cools);
}

/** When the last act ends; 0 where there is none. */
export function endOfAll(network: Network, starts: readonly number[]): number {
  return network.lengths.reduce((last, length, act) => Math.max(last, (starts[act] ?? 0) + length), 0);
}
