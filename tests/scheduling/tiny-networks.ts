import {
  changeOver,
  type Baking,
  type Lag,
  type Network,
  type Tending,
} from "../../core/plan/engine/network.ts";
import { Chance } from "./chance.ts";

function lagsFor(chance: Chance, lengths: readonly number[]): Lag[] {
  const lags: Lag[] = [];
  lengths.forEach((length, from) => {
    for (let to = from + 1; to < lengths.length; to += 1) {
      if (!chance.isLucky(30, 100)) continue;
      lags.push({ from, to, least: length + chance.between(-1, 1) });
      if (chance.isLucky(40, 100)) lags.push({ from: to, to: from, least: -(length + chance.between(0, 3)) });
    }
  });
  return lags;
}

function bakingsFor(chance: Chance, ovens: number): Baking[] {
  const count = ovens === 0 || chance.isLucky(40, 100) ? 0 : chance.between(1, 2);
  return Array.from({ length: count }, () => ({
    oven: chance.between(0, ovens - 1),
    heat: chance.between(0, 2),
    racks: chance.between(1, 2),
  }));
}

function tendingFor(chance: Chance, length: number): Tending[] {
  if (length === 0 || !chance.isLucky(30, 100)) return [];
  const from = chance.between(0, length - 1);
  return [{ thing: 0, length: 1, from, to: Math.min(length - 1, from + chance.between(0, 1)) }];
}

/** A network of two to four acts with everything that a network may have in it. */
export function tinyNetwork(seed: number): Network {
  const chance = new Chance(seed);
  const lengths = Array.from({ length: chance.between(2, 4) }, () => chance.between(0, 3));
  const ovens = Array.from({ length: chance.between(0, 2) }, () => ({
    racks: chance.between(1, 3),
    heats: chance.between(1, 2),
    cools: chance.between(1, 2),
    temperature: chance.isLucky(50, 100) ? chance.between(0, 2) : null,
  }));
  const isRunning = lengths.map((length, act) => act === 0 && length > 1 && chance.isLucky(25, 100));
  return {
    lengths,
    earliest: isRunning.map((running) => (running ? -1 : chance.between(0, 2))),
    latest: isRunning.map((running) =>
      running ? -1 : chance.isLucky(20, 100) ? chance.between(2, 6) : Infinity,
    ),
    lags: lagsFor(chance, lengths),
    capacities: [1, chance.between(1, 3)],
    uses: lengths.map((length) =>
      [0, 1, 1].flatMap((thing) => {
        if (length === 0 || !chance.isLucky(45, 100)) return [];
        const from = chance.between(0, length - 1);
        return [{ thing, amount: chance.between(1, thing + 1), from, to: chance.between(from + 1, length) }];
      }),
    ),
    tending: lengths.map((length) => tendingFor(chance, length)),
    ovens,
    bakings: lengths.map(() => bakingsFor(chance, ovens.length)),
  };
}

/** One act with its place in time, in the oven and in the cook's day. */
interface Laid {
  readonly start: number;
  readonly baking: Baking | null;
  readonly tended: readonly number[];
}

function hasRoom(network: Network, laid: readonly Laid[], at: number): boolean {
  const taken = network.capacities.map(() => 0);
  const take = (thing: number, amount: number, from: number, to: number) => {
    if (from <= at && at < to) taken[thing] = (taken[thing] ?? 0) + amount;
  };
  const racks = network.ovens.map(() => 0);
  laid.forEach(({ start, baking, tended }, act) => {
    for (const use of network.uses[act] ?? []) take(use.thing, use.amount, start + use.from, start + use.to);
    (network.tending[act] ?? []).forEach(({ thing, length }, index) => {
      take(thing, 1, tended[index] ?? 0, (tended[index] ?? 0) + length);
    });
    const isInside = start <= at && at < start + (network.lengths[act] ?? 0);
    if (baking !== null && isInside) racks[baking.oven] = (racks[baking.oven] ?? 0) + baking.racks;
  });
  const isRackFree = racks.every((count, oven) => count <= (network.ovens[oven]?.racks ?? 0));
  return isRackFree && taken.every((count, thing) => count <= (network.capacities[thing] ?? 0));
}

function isOvenRight(network: Network, laid: readonly Laid[]): boolean {
  return laid.every(({ start, baking }, act) => {
    if (baking === null) return true;
    const oven = network.ovens[baking.oven];
    if (oven === undefined) return false;
    const { temperature } = oven;
    const wait =
      temperature === null || temperature === baking.heat ? 0 : changeOver(oven, temperature, baking.heat);
    if (start >= 0 && start < wait) return false;
    return laid.slice(act + 1).every((other, index) => {
      if (other.baking?.oven !== baking.oven || other.baking.heat === baking.heat) return true;
      const end = start + (network.lengths[act] ?? 0);
      const otherEnd = other.start + (network.lengths[act + 1 + index] ?? 0);
      const isAfter = other.start >= end + changeOver(oven, baking.heat, other.baking.heat);
      return isAfter || start >= otherEnd + changeOver(oven, other.baking.heat, baking.heat);
    });
  });
}

/** Whether the first acts of a network, laid so, keep it as far as they go. */
function keeps(network: Network, laid: readonly Laid[]): boolean {
  const isKept = network.lags.every(({ from, to, least }) => {
    const [before, after] = [laid[from], laid[to]];
    return before === undefined || after === undefined || after.start >= before.start + least;
  });
  if (!isKept || !isOvenRight(network, laid)) return false;
  const moments = laid.flatMap((one) => [one.start, one.start + 1, one.start + 2, ...one.tended]);
  return moments.every((at) => hasRoom(network, laid, at));
}

/** All ways to lay one act that keep what is its own, with an end of at most `last`. */
function waysOf(network: Network, act: number, last: number): Laid[] {
  const bakings = network.bakings[act] ?? [];
  const tending = network.tending[act] ?? [];
  const ways: Laid[] = [];
  const latest = Math.min(network.latest[act] ?? Infinity, last - (network.lengths[act] ?? 0));
  for (let start = network.earliest[act] ?? 0; start <= latest; start += 1) {
    const times = tending.map(({ from, to }) =>
      Array.from({ length: to - from + 1 }, (_, at) => start + from + at),
    );
    const all = times.reduce<number[][]>(
      (some, own) => some.flatMap((one) => own.map((time) => [...one, time])),
      [[]],
    );
    for (const tended of all) {
      for (const baking of bakings.length === 0 ? [null] : bakings) ways.push({ start, baking, tended });
    }
  }
  return ways;
}

function fits(network: Network, laid: readonly Laid[], last: number): boolean {
  const act = laid.length;
  if (act === network.lengths.length) return true;
  return waysOf(network, act, last).some((way) => {
    const next = [...laid, way];
    return keeps(network, next) && fits(network, next, last);
  });
}

/** The shortest end by trying everything up to `limit`; Infinity if there is none. */
export function shortestByTrying(network: Network, limit: number): number {
  for (let last = 0; last <= limit; last += 1) if (fits(network, [], last)) return last;
  return Infinity;
}
