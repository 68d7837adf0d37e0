import type { Baking, Network, OvenFacts } from "../../../core/plan/engine/network.ts";

/** A stretch of a thing for the cumulative constraint: its start and amount are MiniZinc expressions. */
interface Task {
  readonly start: string;
  readonly length: number;
  readonly amount: string;
}

/** The names of the model's variables. */
export const startOf = (act: number): string => `s${act}`;
export const bakingOf = (act: number): string => `b${act}`;
export const tendedOf = (act: number, which: number): string => `t${act}_${which}`;
export const finish = "finish";

const plus = (variable: string, offset: number): string => `${variable} + ${offset}`;
const list = (items: readonly (string | number)[]): string => `[${items.join(", ")}]`;

/** Whole units of time from one heat to another: the least that will do at this rate. */
function warming(oven: OvenFacts, from: number, to: number): number {
  return Math.ceil(Math.max((to - from) / oven.heats, (from - to) / oven.cools));
}

/** When each act may start so that it ends within the horizon; null: some act has no such moment. */
function windows(network: Network, horizon: number): readonly (readonly [number, number])[] | null {
  const all = network.lengths.map((length, act): readonly [number, number] => [
    network.earliest[act] ?? 0,
    Math.min(network.latest[act] ?? Infinity, horizon - length),
  ]);
  return all.every(([from, to]) => from <= to) ? all : null;
}

function variables(network: Network, bounds: readonly (readonly [number, number])[], horizon: number) {
  const starts = bounds.map(([from, to], act) => `var ${from}..${to}: ${startOf(act)};`);
  const bakings = network.bakings.flatMap((choices, act) =>
    choices.length === 0 ? [] : [`var 0..${choices.length - 1}: ${bakingOf(act)};`],
  );
  const tended = network.tending.flatMap((wishes, act) =>
    wishes.flatMap(({ from, to }, which) => {
      const [first, last] = bounds[act] ?? [0, 0];
      const name = tendedOf(act, which);
      return [
        `var ${first + from}..${last + to}: ${name};`,
        `constraint ${name} >= ${plus(startOf(act), from)} /\\ ${name} <= ${plus(startOf(act), to)};`,
      ];
    }),
  );
  return [...starts, ...bakings, ...tended, `var 0..${horizon}: ${finish};`];
}

function cumulative(tasks: readonly Task[], capacity: number): readonly string[] {
  const some = tasks.filter((task) => task.length > 0 && task.amount !== "0");
  if (some.length === 0) return [];
  const starts = list(some.map((task) => task.start));
  const lengths = list(some.map((task) => task.length));
  const amounts = list(some.map((task) => task.amount));
  return [`constraint cumulative(${starts}, ${lengths}, ${amounts}, ${capacity});`];
}

function things(network: Network): readonly string[] {
  return network.capacities.flatMap((capacity, thing) => {
    const tasks = network.lengths.flatMap((_, act): readonly Task[] => [
      ...(network.uses[act] ?? [])
        .filter((use) => use.thing === thing)
        .map(({ from, to, amount }) => ({
          start: plus(startOf(act), from),
          length: to - from,
          amount: `${amount}`,
        })),
      ...(network.tending[act] ?? []).flatMap((one, which) =>
        one.thing === thing ? [{ start: tendedOf(act, which), length: one.length, amount: "1" }] : [],
      ),
    ]);
    return cumulative(tasks, capacity);
  });
}

/** "It takes this baking", or nothing to say where there is no other. */
const takes = (act: number, choice: number): string => `${bakingOf(act)} = ${choice}`;

/** The racks that an act takes of an oven, by which baking it takes. */
function racksIn(choices: readonly Baking[], act: number, oven: number): string {
  const here = choices.flatMap((one, choice) => (one.oven === oven ? [{ choice, racks: one.racks }] : []));
  const [first] = here;
  if (first === undefined) return "0";
  const isAlways = here.length === choices.length && here.every(({ racks }) => racks === first.racks);
  if (isAlways) return `${first.racks}`;
  return here.map(({ choice, racks }) => `${racks} * bool2int(${takes(act, choice)})`).join(" + ");
}

/** At different heats in one oven the one is out, and the heat changed, before the other is in. */
function changeOvers(network: Network, a: number, b: number): readonly string[] {
  const order = `p${a}_${b}`;
  const first = network.bakings[a] ?? [];
  const second = network.bakings[b] ?? [];
  const [endA, endB] = [a, b].map((act) => plus(startOf(act), network.lengths[act] ?? 0));
  const rules = first.flatMap((one, x) =>
    second.flatMap((other, y) => {
      const oven = network.ovens[one.oven];
      if (oven === undefined || one.oven !== other.oven || one.heat === other.heat) return [];
      const both = `${takes(a, x)} /\\ ${takes(b, y)}`;
      const there = warming(oven, one.heat, other.heat);
      const back = warming(oven, other.heat, one.heat);
      return [
        `constraint (${both} /\\ ${order}) -> ${endA ?? ""} + ${there} <= ${startOf(b)};`,
        `constraint (${both} /\\ not ${order}) -> ${endB ?? ""} + ${back} <= ${startOf(a)};`,
      ];
    }),
  );
  return rules.length === 0 ? [] : [`var bool: ${order};`, ...rules];
}

/** An oven is at its temperature at 0; what started before that is running and asks for nothing. */
function coldStart(network: Network, act: number): readonly string[] {
  const start = startOf(act);
  return (network.bakings[act] ?? []).flatMap((baking, choice) => {
    const oven = network.ovens[baking.oven];
    if (oven === undefined || oven.temperature === null) return [];
    const hot = warming(oven, oven.temperature, baking.heat);
    return [`constraint ${takes(act, choice)} -> (${start} < 0 \\/ ${start} >= ${hot});`];
  });
}

function ovens(network: Network): readonly string[] {
  const acts = network.bakings.flatMap((choices, act) => (choices.length === 0 ? [] : [act]));
  const racks = network.ovens.flatMap((oven, index) => {
    const tasks = acts.map((act): Task => ({
      start: startOf(act),
      length: network.lengths[act] ?? 0,
      amount: racksIn(network.bakings[act] ?? [], act, index),
    }));
    return cumulative(tasks, oven.racks);
  });
  const pairs = acts.flatMap((a, at) => acts.slice(at + 1).flatMap((b) => changeOvers(network, a, b)));
  return [...racks, ...pairs, ...acts.flatMap((act) => coldStart(network, act))];
}

/**
 * No end is sooner than all that is taken of a thing fills its capacity. It follows from the rest, but the solver
 * does not see it where there are two of a thing, and proves nothing for minutes.
 */
function fullLoad(network: Network): readonly string[] {
  const first = network.earliest.reduce((least, one) => Math.min(least, one), 0);
  return network.capacities.flatMap((capacity, thing) => {
    const uses = network.uses.flat().filter((use) => use.thing === thing);
    const load = uses.reduce((sum, use) => sum + use.amount * (use.to - use.from), 0);
    return capacity > 0 ? [`constraint ${finish} >= ${first + Math.ceil(load / capacity)};`] : [];
  });
}

/**
 * The network as a MiniZinc model that minimises the end of all, written from the comments of `Network` alone:
 * it shares no code with any engine. null: some act cannot end within the horizon, so there is nothing to solve.
 * @param horizon everything ends by then
 */
export function exactModel(network: Network, horizon: number): string | null {
  const bounds = windows(network, horizon);
  if (bounds === null) return null;
  const lags = network.lags.map(
    ({ from, to, least }) => `constraint ${startOf(to)} - ${startOf(from)} >= ${least};`,
  );
  const ends = network.lengths.map((length, act) => `constraint ${finish} >= ${plus(startOf(act), length)};`);
  const search = `int_search(${list([finish, ...network.lengths.map((_, act) => startOf(act))])}, smallest, indomain_min)`;
  return [
    'include "cumulative.mzn";',
    ...variables(network, bounds, horizon),
    ...lags,
    ...things(network),
    ...ovens(network),
    ...ends,
    ...fullLoad(network),
    `solve :: ${search} minimize ${finish};`,
  ].join("\n");
}
