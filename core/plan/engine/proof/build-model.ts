import { endOfAll, type Network, type Timetable } from "../network.ts";
import { closureOf } from "./closure.ts";
import { horizonOf } from "./horizon.ts";
import { addEdge, addVariable, type Draft, type Model, type Part } from "./model.ts";
import { addChoices, addOvens } from "./ovens.ts";
import { Pairs } from "./pairs.ts";
import { smoothUses } from "./smooth-uses.ts";

interface Times {
  readonly origin: number;
  readonly end: number;
  readonly tended: readonly (readonly number[])[];
}

/** A variable for each act, each tending, the origin and the end, with what binds them to each other. */
function addTimes(network: Network, least: number, horizon: number, draft: Draft): Times {
  network.lengths.forEach((length, act) => {
    const latest = Math.min(network.latest[act] ?? Infinity, horizon - length);
    addVariable(draft, network.earliest[act] ?? 0, latest);
  });
  const tended = network.tending.map((all, act) =>
    all.map((tending) => {
      const [lower, upper] = [draft.lower[act] ?? 0, draft.upper[act] ?? 0];
      const time = addVariable(draft, lower + tending.from, upper + tending.to);
      addEdge(draft, act, time, tending.from);
      addEdge(draft, time, act, -tending.to);
      return time;
    }),
  );
  const origin = addVariable(draft, 0, 0);
  const end = addVariable(draft, least, horizon);
  network.lengths.forEach((length, act) => addEdge(draft, act, end, length));
  for (const lag of network.lags) addEdge(draft, lag.from, lag.to, lag.least);
  return { origin, end, tended };
}

/** What the acts and their tending take of the things. */
function addUses(network: Network, tended: Times["tended"], draft: Draft): void {
  network.uses.forEach((uses, variable) => {
    for (const use of smoothUses(uses))
      draft.parts.push({ ...use, resource: use.thing, variable, condition: -1 });
  });
  network.tending.forEach((all, act) =>
    all.forEach(({ thing, length }, index) => {
      const variable = tended[act]?.[index];
      if (variable === undefined || length <= 0) return;
      draft.parts.push({ resource: thing, variable, amount: 1, from: 0, to: length, condition: -1 });
    }),
  );
}

/** Rules out what is too large by itself; tells whether something that cannot be avoided is. */
function hasTooLarge(draft: Draft, capacities: readonly number[]): boolean {
  const tooLarge = draft.parts.filter((part) => part.amount > (capacities[part.resource] ?? 0));
  for (const { condition } of tooLarge) if (condition >= 0) draft.nogoods.push([condition, 1]);
  return tooLarge.some((part) => part.condition < 0);
}

/**
 * Enters each two parts that do not fit beside each other as a pair.
 * @returns the resources to which nothing more needs to be said, because no two parts of theirs fit beside each other
 */
function addPairs(draft: Draft, capacities: readonly number[], pairs: Pairs): ReadonlySet<number> {
  const settled = new Set<number>();
  capacities.forEach((capacity, resource) => {
    const parts = draft.parts.filter((part) => part.resource === resource);
    const beside = parts.flatMap((one, index) => parts.slice(index + 1).map((other) => ({ one, other })));
    const isTight = beside.map(({ one, other }) => one.amount + other.amount > capacity);
    beside.forEach(({ one, other }, index) => {
      if (isTight[index] === true && one.variable !== other.variable) pairs.keepApart(apart(one, other));
    });
    if (isTight.every(Boolean)) settled.add(resource);
  });
  return settled;
}

function apart(one: Part, other: Part) {
  const after = one.to - other.from;
  return { first: one.variable, second: other.variable, after, before: other.to - one.from };
}

/**
 * The model of a network; null where its lags and windows contradict each other by themselves.
 * @param known a timetable that keeps the network; only ends before its end are then of interest
 * @param least no timetable ends before this; 0 where nothing is known
 */
export function buildModel(network: Network, known: Timetable | null, least: number): Model | null {
  const horizon = known === null ? horizonOf(network) : endOfAll(network, known.starts) - 1;
  const draft: Draft = { lower: [], upper: [], edges: [], parts: [], nogoods: [] };
  const { origin, end, tended } = addTimes(network, least, horizon, draft);
  const times = draft.lower.length;
  addUses(network, tended, draft);
  const choices = addChoices(network, draft);
  const closure = closureOf({ ...draft, lower: draft.lower.slice(0, times) }, origin);
  if (closure.isContradictory) return null;
  const pairs = new Pairs(draft, closure);
  addOvens(network, { origin, choices, pairs, draft });
  const capacities = [...network.capacities, ...network.ovens.map((oven) => oven.racks)];
  if (hasTooLarge(draft, capacities)) return null;
  const settled = addPairs(draft, network.capacities, pairs);
  return {
    times,
    variables: draft.lower.length,
    origin,
    end,
    lower: draft.lower,
    upper: draft.upper,
    edges: draft.edges,
    parts: draft.parts,
    settled,
    capacities,
    nogoods: draft.nogoods,
    tended,
    choices,
  };
}
