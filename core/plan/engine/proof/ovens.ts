import { changeOver, type Baking, type Network } from "../network.ts";
import { addEdge, addVariable, type Draft } from "./model.ts";
import type { Pairs } from "./pairs.ts";

interface Place {
  readonly act: number;
  readonly baking: Baking;
  /** What must hold for the act to bake so; empty where it has no choice. */
  readonly conditions: readonly number[];
}

/** What `addOvens` adds to, and what it must know. */
export interface OvenParts {
  readonly origin: number;
  readonly choices: readonly (readonly number[])[];
  readonly pairs: Pairs;
  readonly draft: Draft;
}

/** A switch for each baking of each act that has two or more, exactly one of which is on. */
export function addChoices(network: Network, draft: Draft): readonly (readonly number[])[] {
  return network.bakings.map((bakings) => {
    if (bakings.length < 2) return [];
    const choices = bakings.map(() => addVariable(draft, 0, 1));
    draft.nogoods.push(choices.flatMap((choice) => [2 * choice + 1, 0]));
    choices.forEach((choice, index) => {
      for (const other of choices.slice(index + 1)) draft.nogoods.push([2 * choice, 1, 2 * other, 1]);
    });
    return choices;
  });
}

/**
 * How hot the oven is at 0 delays whatever starts in it at another heat. An act that is sure to start before 0 is in
 * there already, whatever the thermometer says.
 */
function addFirstHeating(network: Network, place: Place, origin: number, draft: Draft): void {
  const oven = network.ovens[place.baking.oven];
  if (oven === undefined || oven.temperature === null || oven.temperature === place.baking.heat) return;
  if ((network.latest[place.act] ?? Infinity) < 0) return;
  const wait = changeOver(oven, oven.temperature, place.baking.heat);
  addEdge(draft, origin, place.act, wait, place.conditions);
}

function addPair(network: Network, one: Place, other: Place, parts: OvenParts, order: number | null): void {
  const oven = network.ovens[one.baking.oven];
  if (oven === undefined) return;
  const isSame = one.baking.heat === other.baking.heat;
  const [length, otherLength] = [network.lengths[one.act] ?? 0, network.lengths[other.act] ?? 0];
  const isFitting = one.baking.racks + other.baking.racks <= oven.racks || length === 0 || otherLength === 0;
  if (isSame && isFitting) return;
  const after = length + changeOver(oven, one.baking.heat, other.baking.heat);
  const before = otherLength + changeOver(oven, other.baking.heat, one.baking.heat);
  const pair = { first: one.act, second: other.act, after, before };
  const conditions = [...one.conditions, ...other.conditions];
  if (order === null) parts.pairs.keepApart(pair);
  else parts.pairs.keepApartIf(pair, conditions, order);
}

/** Racks, heats and change-overs. */
export function addOvens(network: Network, parts: OvenParts): void {
  const { draft, choices } = parts;
  const places = network.bakings.map((bakings, act) =>
    bakings.map((baking, index): Place => {
      const choice = choices[act]?.[index];
      return { act, baking, conditions: choice === undefined ? [] : [2 * choice] };
    }),
  );
  for (const place of places.flat()) {
    const { act: variable, baking, conditions } = place;
    const to = network.lengths[variable] ?? 0;
    const resource = network.capacities.length + baking.oven;
    const condition = conditions[0] ?? -1;
    addFirstHeating(network, place, parts.origin, draft);
    if (baking.racks > 0 && to > 0)
      draft.parts.push({ resource, variable, amount: baking.racks, from: 0, to, condition });
  }
  places.forEach((own, act) => {
    for (const others of places.slice(act + 1)) {
      const meeting = own.flatMap((one) =>
        others.filter((other) => other.baking.oven === one.baking.oven).map((other) => ({ one, other })),
      );
      const isFree = own.length > 1 || others.length > 1;
      const order = isFree && meeting.length > 0 ? addVariable(draft, 0, 1) : null;
      for (const { one, other } of meeting) addPair(network, one, other, parts, order);
    }
  });
}
