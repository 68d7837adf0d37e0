import { tellsMore } from "../food/changing-words.ts";
import { foodsOf, isFromCan, type Told } from "../food/ingredient-food.ts";
import type { Food } from "../food/food.ts";
import { normaliseFood } from "../food/names.ts";
import type { DietName } from "./diet.ts";
import { listedPart, type FoodGroup, type Larder, type Part } from "./groups.ts";

/** What is known of what an ingredient is. */
export interface Kind {
  readonly item: string;
  /** As in the recipe, lower case: "no salt added, drained". */
  readonly preparation: string;
  /** Several where it may be any of them or a mixture; empty where it is no food of the table or of a label. */
  readonly foods: readonly Food[];
  /** Why it is none; null where it is one. */
  readonly why: string | null;
  /** Where it is none, every name it may be listed under, as `normaliseFood` gives them. */
  readonly names: readonly string[];
  /** Where it is none, whether the recipe tells of something in it that it names nowhere else: "fried", "1 can". */
  readonly hasMore: boolean;
  /** Where it is none, the foods that its name fits: bare "chickpeas". */
  readonly candidates: readonly string[];
}

const PURPOSE = /\s+for\s.*$/i;
const LOOSE = /\b(?:extra|small|medium|large|big|ripe|fresh|organic)\b/gi;

/** Finds out what an ingredient is. */
export function kindOf(ingredient: Told, larder: Larder): Kind {
  const { item, preparation } = ingredient;
  const found = foodsOf(larder.foods, ingredient);
  const told = { item, preparation: (preparation ?? "").toLowerCase() };
  if (found.ok) return { ...told, foods: found.value, why: null, names: [], hasMore: false, candidates: [] };
  const bare = item.replace(PURPOSE, "").replace(LOOSE, " ");
  const parts = (preparation ?? "").split(",").filter((part) => part.trim() !== "");
  const written = [item, bare, ...parts.flatMap((part) => [`${bare} ${part}`, `${part} ${bare}`])];
  const asked = normaliseFood(bare);
  const near = [...larder.foods].flatMap(([name, food]) => (name.endsWith(` ${asked}`) ? [food.name] : []));
  return {
    ...told,
    foods: [],
    why: found.error,
    names: [...new Set(written.map(normaliseFood))],
    hasMore: tellsMore(item, preparation) || isFromCan(ingredient),
    candidates: asked === "" ? [] : [...new Set(near)].map(normaliseFood),
  };
}

/** A food by its name alone. */
export const kindNamed = (item: string, larder: Larder): Kind =>
  kindOf({ item, preparation: null, food: null }, larder);

/** What the packet lists a label's food as made of; null where the ingredient is no label, or its packet lists nothing. */
export function madeOf(kind: Kind, larder: Larder): readonly Kind[] | null {
  const lists = kind.foods.map((food) => food.madeOf);
  if (lists.length === 0 || lists.some((list) => list === null)) return null;
  return [...new Set(lists.flatMap((list) => list ?? []))].map((name) => kindNamed(name, larder));
}

/** What all of several have in common: where some have nothing to do with it and others have, it may be in. */
function common(parts: readonly Part[]): Part {
  const [first] = parts;
  if (first === undefined) return "unknown";
  if (parts.every((part) => part === first)) return first;
  if (parts.every((part) => part === "is" || part === "has")) return "has";
  return parts.every((part) => part === "free" || part === "unknown") ? "unknown" : "may";
}

/** What a thing has to do with a group when it is made of several: one of them is enough. */
function together(parts: readonly Part[]): Part {
  if (parts.every((part) => part === "is")) return "is";
  if (parts.some((part) => part === "is" || part === "has")) return "has";
  return (["may", "unknown"] as const).find((part) => parts.includes(part)) ?? "free";
}

/** What the foods that a name may mean have to do with a group; that none of them has anything to do with it says nothing. */
function partOfCandidates(candidates: readonly string[], group: FoodGroup): Part {
  const part = common(candidates.map((name) => listedPart(group, name) ?? "free"));
  return part === "free" ? "unknown" : part;
}

/** Whether a name is the group's own: "nuts" are nuts, and so is what lies whole within them. */
const isItsName = (names: readonly string[], group: FoodGroup, larder: Larder): boolean =>
  names.some((name) => {
    const named = larder.groups.get(name);
    return (
      named !== undefined &&
      (named === group || (named.is.size > 0 && [...named.is].every((one) => group.is.has(one))))
    );
  });

const AND = /\s*(?:[,&+]|\band\b|\bplus\b)\s*/i;

/** "Salt and pepper" are two foods in one name; null where it is one, or a part of it is nothing that anybody knows. */
function inOneName({ item }: Kind, larder: Larder): readonly Kind[] | null {
  const parts = item.split(AND).filter((part) => part !== "");
  if (parts.length < 2) return null;
  const kinds = parts.map((part) => kindNamed(part, larder));
  const isListed = ({ names }: Kind): boolean =>
    [...larder.groups.values()].some((group) => names.some((name) => listedPart(group, name) !== null));
  const isKnown = (kind: Kind): boolean =>
    kind.foods.length > 0 || kind.candidates.length > 0 || isListed(kind);
  return kinds.every(isKnown) ? kinds : null;
}

const NO_SALT = /\b(?:no|without)(?:[\s-]+added)?[\s-]+salt\b|\bunsalted\b|\bsalt[\s-]free\b/;
const NO_SUGAR = /\b(?:no|without)(?:[\s-]+added)?[\s-]+sugar\b|\bunsweetened\b|\bsugar[\s-]free\b/;
const NO_FAT = /\b(?:no|without)(?:[\s-]+added)?[\s-]+(?:oil|fat)\b|\boil[\s-]free\b/;

/** What the recipe's words say is not in it; where some makers put it in, these did not. */
const DENIED: readonly (readonly [group: string, words: RegExp])[] = [
  ["added salt", NO_SALT],
  ["added sugar", NO_SUGAR],
  ["added fat", NO_FAT],
];

const isDenied = ({ item, preparation }: Kind, group: FoodGroup): boolean =>
  DENIED.some(([name, words]) => name === group.name && words.test(`${item.toLowerCase()} ${preparation}`));

/** Traces of "sesame" are none of salt; of a name that nobody knows they may be of anything. */
function isTraceOf(name: string, group: FoodGroup, larder: Larder): boolean {
  const part = partOf(kindNamed(name, larder), group, larder);
  return part === "unknown" ? !larder.groups.has(normaliseFood(name)) : part !== "free";
}

/** A food of the table is free of what does not list it; of a label's only its packet tells. */
function partOfFood(food: Food, group: FoodGroup, larder: Larder): Part {
  const listed = listedPart(group, normaliseFood(food.name));
  if (food.label === null) return listed ?? "free";
  const held = food.madeOf?.map((name) => partOf(kindNamed(name, larder), group, larder)) ?? null;
  const own = held === null ? (listed ?? "unknown") : together(held);
  return own === "free" && food.mayHold.some((name) => isTraceOf(name, group, larder)) ? "may" : own;
}

/** What an ingredient has to do with a group. */
export function partOf(kind: Kind, group: FoodGroup, larder: Larder): Part {
  if (kind.foods.length > 0) {
    const part = common(kind.foods.map((food) => partOfFood(food, group, larder)));
    return part === "may" && isDenied(kind, group) ? "free" : part;
  }
  const listed = kind.names.map((name) => listedPart(group, name)).find((part) => part !== null) ?? null;
  if (listed !== null) return listed === "may" && isDenied(kind, group) ? "free" : listed;
  if (isItsName(kind.names, group, larder)) return "is";
  const mixed = inOneName(kind, larder)?.map((one) => partOf(one, group, larder)) ?? [];
  if (mixed.length > 0 && !isDenied(kind, group)) return together(mixed);
  const part = partOfCandidates(kind.candidates, group);
  return part !== "is" && isDenied(kind, group) ? "free" : part;
}

const foodNames = (kind: Kind): readonly string[] => kind.foods.map(({ name }) => normaliseFood(name));

/** Whether the rule's own food is the ingredient: by its name alone, not through a group. */
export function isItself(kind: Kind, name: DietName): boolean {
  const names = kind.foods.length > 0 ? foodNames(kind) : kind.names;
  const isNamed = (one: string): boolean =>
    name.kind === "words"
      ? name.words.includes(one)
      : name.kind === "food" && normaliseFood(name.food) === one;
  return kind.foods.length > 0 ? names.every(isNamed) : names.some(isNamed);
}

/** Whether an ingredient whose food nobody knows has a name that holds the rule's own: "peanut brittle". */
const holdsWord = (kind: Kind, word: string): boolean =>
  kind.foods.length === 0 && kind.names.some((one) => ` ${one} `.includes(` ${word} `));

/** What an ingredient has to do with single foods, by their names. */
function partOfFoods(kind: Kind, wanted: readonly string[], larder: Larder): Part {
  if (wanted.some((word) => holdsWord(kind, word))) return "may";
  if (kind.foods.length === 0) return kind.candidates.some((one) => wanted.includes(one)) ? "may" : "unknown";
  const isWanted = (food: Food): boolean => wanted.includes(normaliseFood(food.name));
  const parts = kind.foods.map((food): Part => {
    if (isWanted(food)) return "is";
    if (food.label === null) return "free";
    const held = food.madeOf?.map((one) => partOfFoods(kindNamed(one, larder), wanted, larder)) ?? [
      "unknown",
    ];
    return together(held) === "is" ? "has" : together(held);
  });
  return common(parts);
}

/** What an ingredient has to do with what a rule is about. */
export function partOfName(kind: Kind, name: DietName, larder: Larder): Part {
  if (isItself(kind, name)) return "is";
  switch (name.kind) {
    case "group": {
      const part = partOf(kind, name.group, larder);
      const words = [name.group.name, ...name.group.also].map((one) => normaliseFood(one));
      return part === "unknown" && words.some((word) => holdsWord(kind, word)) ? "may" : part;
    }
    case "food":
      return partOfFoods(kind, [normaliseFood(name.food)], larder);
    case "words":
      return partOfFoods(kind, name.words, larder);
  }
}
