import { findClaim } from "../diet/claims-table.ts";
import type { Diet, DietName, ValueRule } from "../diet/diet.ts";
import type { FoodBook } from "../diet/food-book.ts";
import type { FoodGroup } from "../diet/groups.ts";
import type { PackedDiet, PackedFoodBook, PackedGroup, PackedName } from "./food-book-schema.ts";

/** What stands under several names, once and with all of them. */
interface Named<T> {
  readonly names: readonly string[];
  readonly is: T;
}

function byThing<T>(table: ReadonlyMap<string, T>): readonly Named<T>[] {
  const names = new Map<T, string[]>();
  for (const [name, is] of table) {
    const known = names.get(is);
    if (known === undefined) names.set(is, [name]);
    else known.push(name);
  }
  return [...names].map(([is, all]) => ({ names: all, is }));
}

const byName = <T>(named: readonly Named<T>[]): ReadonlyMap<string, T> =>
  new Map(named.flatMap(({ names, is }) => names.map((name) => [name, is] as const)));

const packedName = (name: DietName): PackedName =>
  name.kind === "group"
    ? { said: name.said, kind: "group", group: name.group.name }
    : name.kind === "words"
      ? { ...name, words: [...name.words] }
      : name;

const packedDiet = (diet: Diet): PackedDiet => ({
  ...diet,
  foods: diet.foods.map((rule) => ({
    ...rule,
    name: packedName(rule.name),
    these: rule.these?.map(packedName) ?? null,
  })),
  allergies: diet.allergies.map(packedName),
  values: diet.values.map((rule) => (rule.kind === "claim" ? { ...rule, claim: rule.claim.says } : rule)),
});

/** Makes it ready for the wire: groups and thresholds by their names. */
export function packFoodBook({ larder, diets, holding, always, eaten }: FoodBook): unknown {
  return {
    foods: byThing(larder.foods),
    groups: byThing(larder.groups).map(({ names, is }) => ({
      names,
      is: { ...is, is: [...is.is], has: [...is.has], may: [...is.may] },
    })),
    diets: diets.map(packedDiet),
    holding: [...holding],
    always,
    eaten,
  };
}

const openedGroup = ({ name, also, is, has, may }: PackedGroup): FoodGroup => ({
  name,
  also,
  is: new Set(is),
  has: new Set(has),
  may: new Set(may),
});

/** Throws where the wire names what was not sent: a rule that is lost is a diet that nobody keeps. */
function present<T>(thing: T | null | undefined, name: string): T {
  if (thing === undefined || thing === null) throw new Error(`a diet names what was not sent: ${name}`);
  return thing;
}

const openedName =
  (groups: ReadonlyMap<string, FoodGroup>) =>
  (name: PackedName): DietName =>
    name.kind === "group"
      ? { said: name.said, kind: "group", group: present(groups.get(name.group), name.group) }
      : name;

const openedLimit = (rule: PackedDiet["values"][number]): ValueRule =>
  rule.kind === "claim" ? { ...rule, claim: present(findClaim(rule.claim), rule.claim) } : rule;

function openedDiet(diet: PackedDiet, groups: ReadonlyMap<string, FoodGroup>): Diet {
  const opened = openedName(groups);
  return {
    ...diet,
    foods: diet.foods.map((rule) => ({
      ...rule,
      name: opened(rule.name),
      these: rule.these?.map(opened) ?? null,
    })),
    allergies: diet.allergies.map(opened),
    values: diet.values.map(openedLimit),
  };
}

/** Makes it what it was before `packFoodBook`. Throws where it names a group or a threshold that there is not. */
export function openFoodBook({ foods, groups, diets, holding, always, eaten }: PackedFoodBook): FoodBook {
  const named = groups.map(({ names, is }) => ({ names, is: openedGroup(is) }));
  const own = new Map(named.map(({ is }) => [is.name, is]));
  return {
    larder: { foods: byName(foods), groups: byName(named) },
    diets: diets.map((diet) => openedDiet(diet, own)),
    holding: new Map(holding),
    always,
    eaten,
  };
}
