import type { Network } from "../../core/plan/engine/network.ts";
import { Chance } from "./chance.ts";
import { dishOf } from "./made-up-dishes.ts";
import { NetworkDraft, type Kitchen } from "./network-draft.ts";

/** A meal of our own invention as a network, in minutes. */
export interface MadeUpMeal {
  readonly name: string;
  readonly network: Network;
}

const oven = (chance: Chance) => ({ racks: 2, heats: chance.between(20, 30), cools: chance.between(6, 10) });

/** Mostly one cook and one oven; now and then two of them. */
function kitchen(seed: number, chance: Chance): Kitchen {
  return {
    cooks: seed % 5 === 0 ? 2 : 1,
    burners: chance.between(2, 4),
    ovens: seed % 4 === 0 ? [oven(chance), oven(chance)] : [oven(chance)],
  };
}

/** One cook can dress so many dishes in the last minutes; more of them would have no timetable at all. */
const freshPerCook = 4;

/**
 * Dishes, all served at one moment by an act of length 0, the last.
 * @param isEnough asked after each dish, with how many dishes and acts there are
 */
function meal(seed: number, isEnough: (dishes: number, acts: number) => boolean): MadeUpMeal {
  const chance = new Chance(seed);
  const facts = kitchen(seed, chance);
  const draft = new NetworkDraft(facts);
  const dressed: { readonly act: number; readonly isFresh: boolean }[] = [];
  while (!isEnough(dressed.length, draft.count)) {
    const dish = dishOf(chance, dressed.length);
    const last = dish.add(draft, chance);
    const dressing = draft.mise(chance.between(1, 2));
    draft.after(last, dressing, 0, dish.dressedWithin);
    const isFresh = dressed.length < freshPerCook * facts.cooks && chance.isLucky(3, 4);
    dressed.push({ act: dressing, isFresh });
  }
  const serving = draft.serve();
  for (const { act, isFresh } of dressed) draft.after(act, serving, 0, isFresh ? 10 : null);
  return { name: `meal-${seed}`, network: draft.build() };
}

/** A meal of three to eight dishes; the same seed gives the same meal. */
export function madeUpMeal(seed: number): MadeUpMeal {
  return meal(seed, (count) => count >= 3 + (seed % 6));
}

/** As many dishes as it takes to have at least so many acts. */
export function mealOfActs(seed: number, least: number): MadeUpMeal {
  return meal(seed, (_, acts) => acts + 1 >= least);
}

/** The meals that the engine is measured on. */
export const madeUpMeals: readonly MadeUpMeal[] = Array.from({ length: 44 }, (_, index) =>
  madeUpMeal(index + 1),
);
