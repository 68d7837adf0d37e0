import type { Chance } from "./chance.ts";
import { around, blender, burner, every, mixer, type Heats, type NetworkDraft } from "./network-draft.ts";

/** Adds a dish's acts and returns the last of them. */
export type Dish = (draft: NetworkDraft, chance: Chance) => number;

function heats(chance: Chance): Heats {
  const low = 300 + 25 * chance.between(0, 5);
  return { low, high: low + 25 * chance.between(0, 3) };
}

/** Some pieces of mise en place, then this: they may be done in any order. */
function preparedBy(draft: NetworkDraft, chance: Chance, most: number, act: number): void {
  const count = chance.between(1, most);
  for (let piece = 0; piece < count; piece += 1) draft.after(draft.mise(chance.between(2, 9)), act);
}

/** Chop and season, roast, rest, carve. */
const roast: Dish = (draft, chance) => {
  const length = chance.between(25, 60);
  const roasting = draft.bake(length, heats(chance), 1, [around(Math.floor(length / 2), 2, length)]);
  preparedBy(draft, chance, 3, roasting);
  const carving = draft.mise(chance.between(3, 6));
  const rest = chance.between(5, 15);
  draft.after(roasting, carving, rest, chance.isLucky(1, 2) ? rest + 10 : null);
  return carving;
};

/** Chop, brown in batches, each side at once after the other, then a long simmer that is stirred. */
const stew: Dish = (draft, chance) => {
  const length = chance.between(25, 50);
  const simmering = draft.handsOff(
    length,
    [burner],
    every(chance.between(5, 10), chance.between(1, 2), length),
  );
  let last: number | null = null;
  const batches = chance.between(1, 3);
  for (let batch = 0; batch < batches; batch += 1) {
    const one = draft.handsOff(chance.between(3, 5), [burner]);
    const other = draft.handsOff(chance.between(2, 4), [burner]);
    draft.after(one, other, 0, chance.between(0, 1));
    if (last === null) preparedBy(draft, chance, 3, one);
    else draft.after(last, one);
    last = other;
  }
  if (last !== null) draft.after(last, simmering, 0, 10);
  const seasoning = draft.handsOn(chance.between(1, 2), [burner]);
  draft.after(simmering, seasoning, 0, 2);
  return seasoning;
};

/** Boil water, cook, drain at once, let it stand. */
const grain: Dish = (draft, chance) => {
  const boiling = draft.handsOff(chance.between(6, 10), [burner]);
  const length = chance.between(9, 18);
  const cooking = draft.handsOff(length, [burner], chance.isLucky(1, 2) ? every(5, 1, length) : []);
  const draining = draft.handsOn(chance.between(1, 2), []);
  const fluffing = draft.mise(chance.between(1, 2));
  preparedBy(draft, chance, 1, cooking);
  draft.after(boiling, cooking, 0, 5);
  draft.after(cooking, draining, 0, chance.between(0, 1));
  draft.after(draining, fluffing, chance.between(3, 8), chance.isLucky(1, 2) ? 20 : null);
  return fluffing;
};

/** Mix, let the dough rest, shape, bake in batches, cool, glaze. */
const bakes: Dish = (draft, chance) => {
  const mixing = draft.handsOn(chance.between(4, 8), [mixer]);
  preparedBy(draft, chance, 2, mixing);
  const resting = draft.handsOff(chance.between(10, 30), []);
  draft.after(mixing, resting, 0, 10);
  const shaping = draft.mise(chance.between(4, 9));
  draft.after(resting, shaping);
  const [length, range, racks] = [chance.between(10, 18), heats(chance), chance.between(1, 2)];
  let last = shaping;
  const batches = chance.between(1, 3);
  for (let batch = 0; batch < batches; batch += 1) {
    const baking = draft.bake(length, range, racks, chance.isLucky(1, 3) ? [around(6, 1, length)] : []);
    draft.after(last, baking);
    last = baking;
  }
  const glazing = draft.mise(chance.between(2, 4));
  draft.after(last, glazing, chance.between(10, 25));
  return glazing;
};

/** Chop, whisk, chill. */
const salad: Dish = (draft, chance) => {
  const chilling = draft.handsOff(chance.between(15, 45), []);
  preparedBy(draft, chance, 3, chilling);
  const dressing = draft.handsOn(chance.between(2, 3), [blender]);
  preparedBy(draft, chance, 1, dressing);
  const tossing = draft.mise(chance.between(1, 3));
  draft.after(chilling, tossing);
  draft.after(dressing, tossing, 0, chance.isLucky(1, 2) ? 30 : null);
  return tossing;
};

/** Sweat, reduce with a stir every few minutes, blend while it is hot. */
const sauce: Dish = (draft, chance) => {
  const sweating = draft.handsOn(chance.between(3, 6), [burner]);
  preparedBy(draft, chance, 2, sweating);
  const length = chance.between(10, 24);
  const reducing = draft.handsOff(
    length,
    [burner],
    every(chance.between(4, 6), chance.between(1, 2), length),
  );
  draft.after(sweating, reducing, 0, chance.between(0, 2));
  const blending = draft.handsOn(chance.between(2, 3), [blender]);
  draft.after(reducing, blending, 0, 5);
  return blending;
};

/** Bread the pieces, fry them in batches, flip each at once. */
const fry: Dish = (draft, chance) => {
  const breading = draft.mise(chance.between(4, 8));
  preparedBy(draft, chance, 2, breading);
  let last = breading;
  const batches = chance.between(1, 3);
  for (let batch = 0; batch < batches; batch += 1) {
    const one = draft.handsOff(chance.between(3, 5), [burner]);
    const other = draft.handsOff(chance.between(2, 4), [burner]);
    draft.after(last, one, 0, batch === 0 ? 15 : null);
    draft.after(one, other, 0, chance.between(0, 2));
    last = other;
  }
  const draining = draft.mise(1);
  draft.after(last, draining, 0, 2);
  return draining;
};

/** Boil, mash, spread over, bake until brown. */
const gratin: Dish = (draft, chance) => {
  const boiling = draft.handsOff(chance.between(12, 20), [burner]);
  preparedBy(draft, chance, 3, boiling);
  const mashing = draft.handsOn(chance.between(3, 5), [mixer]);
  draft.after(boiling, mashing, 0, 5);
  const layering = draft.mise(chance.between(3, 6));
  draft.after(mashing, layering);
  const length = chance.between(20, 35);
  const baking = draft.bake(length, heats(chance), chance.between(1, 2));
  draft.after(layering, baking);
  const standing = draft.mise(1);
  draft.after(baking, standing, chance.between(3, 8), 20);
  return standing;
};

const ofTheOven: readonly [Dish, ...Dish[]] = [roast, bakes, gratin];
const ofTheStove: readonly [Dish, ...Dish[]] = [stew, grain, salad, sauce, fry];

/** The how-manieth dish of a meal, from 0, and how long it may wait to be dressed; null: any time. */
export function dishOf(
  chance: Chance,
  index: number,
): { readonly add: Dish; readonly dressedWithin: number | null } {
  // Every third one bakes, so that the heat is fought for. Two that bake at different heats cannot both be
  // dressed soon after, so none of them must: its rest or cooling is limit enough.
  const isBaked = index % 3 === 0 || chance.isLucky(1, 4);
  if (isBaked) return { add: chance.pick(ofTheOven), dressedWithin: null };
  return { add: chance.pick(ofTheStove), dressedWithin: chance.isLucky(1, 2) ? 15 : null };
}
