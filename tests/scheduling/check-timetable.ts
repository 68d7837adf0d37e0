import type { Baking, Network, OvenFacts, Timetable } from "../../core/plan/engine/network.ts";

/** A stretch of time [from, to) in which an act takes so much of something. */
interface Taken {
  readonly act: number;
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

/** An act in an oven. */
interface Baked {
  readonly act: number;
  readonly from: number;
  readonly to: number;
  readonly baking: Baking;
}

/** Rates need not be whole; a degree's millionth is no fault. */
const NOTHING = 1e-6;

const isAt = (moment: number, one: { readonly from: number; readonly to: number }): boolean =>
  one.from <= moment && moment < one.to;

function checkShape(network: Network, timetable: Timetable): readonly string[] {
  const acts = network.lengths.length;
  const lists = [timetable.starts, timetable.bakings, timetable.tended];
  if (lists.some((list) => list.length !== acts)) return [`the timetable does not speak of all ${acts} acts`];
  const times = [...timetable.starts, ...timetable.tended.flat()];
  return times.every(Number.isInteger) ? [] : ["a time is not a whole number"];
}

function checkBounds(network: Network, starts: readonly number[]): readonly string[] {
  return starts.flatMap((start, act) => {
    const earliest = network.earliest[act] ?? 0;
    const latest = network.latest[act] ?? Infinity;
    if (start < earliest) return [`act ${act} starts at ${start}, not before ${earliest} was asked`];
    return start > latest ? [`act ${act} starts at ${start}, not after ${latest} was asked`] : [];
  });
}

function checkLags(network: Network, starts: readonly number[]): readonly string[] {
  return network.lags.flatMap(({ from, to, least }) => {
    const lag = (starts[to] ?? NaN) - (starts[from] ?? NaN);
    return lag >= least ? [] : [`act ${to} starts ${lag} after act ${from}, at least ${least} was asked`];
  });
}

function checkTending(network: Network, timetable: Timetable): readonly string[] {
  return network.tending.flatMap((wishes, act) => {
    const start = timetable.starts[act] ?? NaN;
    const moments = timetable.tended[act] ?? [];
    if (moments.length !== wishes.length)
      return [`act ${act} is tended ${moments.length} times, ${wishes.length} times was asked`];
    return wishes.flatMap(({ from, to }, which) => {
      const moment = moments[which] ?? NaN;
      return moment >= start + from && moment <= start + to
        ? []
        : [`act ${act} is tended at ${moment}, between ${start + from} and ${start + to} was asked`];
    });
  });
}

/** All that is taken of one thing, by uses and by tending. */
function takenOf(network: Network, timetable: Timetable, thing: number): readonly Taken[] {
  return network.lengths.flatMap((_, act) => {
    const start = timetable.starts[act] ?? NaN;
    const uses = (network.uses[act] ?? [])
      .filter((use) => use.thing === thing)
      .map(({ amount, from, to }) => ({ act, amount, from: start + from, to: start + to }));
    const tended = (network.tending[act] ?? []).flatMap((one, which) => {
      const from = timetable.tended[act]?.[which] ?? NaN;
      return one.thing === thing ? [{ act, amount: 1, from, to: from + one.length }] : [];
    });
    return [...uses, ...tended];
  });
}

/** The moments at which more is taken than there is; what is taken only ever grows where a stretch begins. */
function overfull(taken: readonly Taken[], capacity: number, what: string): readonly string[] {
  const moments = [...new Set(taken.map((one) => one.from))].sort((a, b) => a - b);
  return moments.flatMap((moment) => {
    const now = taken.filter((one) => isAt(moment, one));
    const amount = now.reduce((sum, one) => sum + one.amount, 0);
    if (amount <= capacity) return [];
    const acts = [...new Set(now.map((one) => one.act))].join(", ");
    return [`at ${moment} acts ${acts} take ${amount} of ${what}, there are ${capacity}`];
  });
}

/** Each act's baking is one of those it may take; with no oven needed, the list says 0. */
function checkBakings(network: Network, timetable: Timetable): readonly string[] {
  return network.bakings.flatMap((choices, act) => {
    const choice = timetable.bakings[act] ?? NaN;
    if (choices.length === 0) return choice === 0 ? [] : [`act ${act} bakes, and it needs no oven`];
    return choices[choice] === undefined ? [`act ${act} has no baking ${choice}`] : [];
  });
}

function bakedIn(network: Network, timetable: Timetable, oven: number): readonly Baked[] {
  return network.bakings.flatMap((choices, act) => {
    const baking = choices[timetable.bakings[act] ?? NaN];
    const from = timetable.starts[act] ?? NaN;
    return baking?.oven === oven ? [{ act, from, to: from + (network.lengths[act] ?? NaN), baking }] : [];
  });
}

/** Whether the oven comes from one heat to the other within so long. */
function comesInTime(oven: OvenFacts, from: number, to: number, time: number): boolean {
  const degrees = to >= from ? oven.heats * time : oven.cools * time;
  return time >= 0 && degrees >= Math.abs(to - from) - NOTHING;
}

/** Two acts at different heats in one oven: the one must be out, and the heat changed, before the other is in. */
function checkPair(oven: OvenFacts, a: Baked, b: Baked): readonly string[] {
  if (a.baking.heat === b.baking.heat) return [];
  const [first, second] = a.from <= b.from ? [a, b] : [b, a];
  const acts = `acts ${first.act} and ${second.act}`;
  const heats = `${first.baking.heat} and ${second.baking.heat} degrees`;
  if (second.from < first.to) return [`${acts} are in one oven together at ${heats}`];
  const between = second.from - first.to;
  return comesInTime(oven, first.baking.heat, second.baking.heat, between)
    ? []
    : [`${acts} bake at ${heats} with only ${between} between them`];
}

function checkOven(
  network: Network,
  timetable: Timetable,
  oven: OvenFacts,
  index: number,
): readonly string[] {
  const baked = bakedIn(network, timetable, index);
  const pairs = baked.flatMap((a, at) => baked.slice(at + 1).flatMap((b) => checkPair(oven, a, b)));
  const racks = baked.map((one): Taken => ({ ...one, amount: one.baking.racks }));
  const { temperature } = oven;
  const cold = baked.flatMap(({ act, from, baking }) => {
    // What started before 0 is running: the oven was hot enough for it.
    if (temperature === null || from < 0 || comesInTime(oven, temperature, baking.heat, from)) return [];
    return [`act ${act} goes in at ${from} at ${baking.heat} degrees, the oven is at ${temperature} at 0`];
  });
  return [...pairs, ...overfull(racks, oven.racks, `the racks of oven ${index}`), ...cold];
}

/**
 * What is wrong with a timetable, told from the network alone and without any engine's code: one sentence a
 * fault, none when it is right. It takes its time: every pair and every moment is looked at.
 */
export function faultsOf(network: Network, timetable: Timetable): readonly string[] {
  const shape = checkShape(network, timetable);
  if (shape.length > 0) return shape;
  return [
    ...checkBounds(network, timetable.starts),
    ...checkLags(network, timetable.starts),
    ...checkTending(network, timetable),
    ...network.capacities.flatMap((capacity, thing) =>
      overfull(takenOf(network, timetable, thing), capacity, `thing ${thing}`),
    ),
    ...checkBakings(network, timetable),
    ...network.ovens.flatMap((oven, index) => checkOven(network, timetable, oven, index)),
  ];
}
