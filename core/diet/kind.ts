import { findFood } from "../food/find-food.ts";
import type { Food } from "../food/food.ts";
import { normaliseFood } from "../food/names.ts";
import type { Ingredient } from "../recipe/model.ts";
import type { DietName } from "./diet.ts";
import { listedPart, type FoodGroup, type Larder, type Part } from "./groups.ts";

/** What is known of what an ingredient is. */
export interface Kind {
  readonly item: string;
  /** As in the recipe, lower case: "no salt added, drained". */
  readonly preparation: string;
  /** null: no food of the table, or nobody can tell which. */
  readonly food: Food | null;
  /** Why it is none; null where it is one. */
  readonly why: string | null;
  /** Every name it may be listed under, as `normaliseFood` gives them. */
  readonly names: readonly string[];
  /** The foods that it may be where its name fits several: bare "chickpeas". */
  readonly candidates: readonly string[];
}

const PURPOSE = /\s+for\s.*$/i;
const LOOSE = /\b(?:extra|small|medium|large|big|ripe|fresh|organic)\b/gi;

/** Finds out what an ingredient is. */
export function kindOf(
  { item, preparation }: Pick<Ingredient, "item" | "preparation">,
  larder: Larder,
): Kind {
  const found = findFood(larder.foods, item, preparation);
  const bare = item.replace(PURPOSE, "").replace(LOOSE, " ");
  const parts = (preparation ?? "").split(",").filter((part) => part.trim() !== "");
  const written = [item, bare, ...parts.flatMap((part) => [`${bare} ${part}`, `${part} ${bare}`])];
  const asked = normaliseFood(bare);
  const near = [...larder.foods].flatMap(([name, food]) => (name.endsWith(` ${asked}`) ? [food.name] : []));
  return {
    item,
    preparation: (preparation ?? "").toLowerCase(),
    food: found.ok ? found.value : null,
    why: found.ok ? null : found.error,
    // "Canned tomatoes, no salt added" are a food of their own, and no longer the bare canned tomatoes.
    names: [...new Set((found.ok ? [found.value.name] : written).map(normaliseFood))],
    candidates: found.ok || asked === "" ? [] : [...new Set(near)].map(normaliseFood),
  };
}

/** What all of the foods that a name may mean have in common; one that fits none says nothing. */
function partOfSeveral(candidates: readonly string[], group: FoodGroup): Part {
  const parts = candidates.map((name) => listedPart(group, name));
  const [first] = parts;
  if (first === undefined || parts.every((part) => part === null)) return "unknown";
  return first !== null && parts.every((part) => part === first) ? first : "may";
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

/** What an ingredient has to do with a group. */
export function partOf(kind: Kind, group: FoodGroup, larder: Larder): Part {
  const listed = kind.names.map((name) => listedPart(group, name)).find((part) => part !== null) ?? null;
  if (listed !== null) return listed === "may" && isDenied(kind, group) ? "free" : listed;
  if (kind.food !== null) return "free";
  if (isItsName(kind.names, group, larder)) return "is";
  const part = partOfSeveral(kind.candidates, group);
  return part !== "is" && isDenied(kind, group) ? "free" : part;
}

/** Whether the rule's own food is the ingredient: by its name alone, not through a group. */
export function isItself(kind: Kind, name: DietName): boolean {
  if (name.kind === "group") return false;
  if (name.kind === "food") return kind.names.includes(normaliseFood(name.food));
  return kind.names.some((one) => name.words.includes(one));
}

/** Whether an ingredient whose food nobody knows has a name that holds the rule's own: "peanut brittle". */
const holdsWord = (kind: Kind, word: string): boolean =>
  kind.food === null && kind.names.some((one) => ` ${one} `.includes(` ${word} `));

/** What an ingredient has to do with what a rule is about. */
export function partOfName(kind: Kind, name: DietName, larder: Larder): Part {
  if (isItself(kind, name)) return "is";
  switch (name.kind) {
    case "group": {
      const part = partOf(kind, name.group, larder);
      const words = [name.group.name, ...name.group.also].map((one) => normaliseFood(one));
      return part === "unknown" && words.some((word) => holdsWord(kind, word)) ? "may" : part;
    }
    case "food": {
      const food = normaliseFood(name.food);
      if (kind.food !== null) return "free";
      return kind.candidates.includes(food) || holdsWord(kind, food) ? "may" : "unknown";
    }
    case "words":
      if (name.words.some((word) => holdsWord(kind, word))) return "may";
      return kind.food === null ? "unknown" : "free";
  }
}
