import { normaliseFood } from "../food/names.ts";
import type { Dish, Step } from "../recipe/model.ts";
import type { Diet, DietName } from "./diet.ts";
import type { Finding } from "./findings.ts";
import { listedPart, type Larder } from "./groups.ts";
import { kindNamed, partOfName, type Kind } from "./kind.ts";
import { allergyWords, foodRuleWords } from "./rule-words.ts";

/** Words of one food at the most: "salted smooth peanut". */
const LONGEST = 3;
/** What is said not to be in it, and what only has a food's size, shape or smell. */
const NOT_MEANT =
  /\b(?:no|not|without|never)(?:[\s-]+(?:any|added|extra|more|the))*[\s-]+\p{L}+|\p{L}+[\s-](?:free|sized?|shaped)\b|\b(?:like|(?:smells?|tastes?|size) of)\s+(?:an?\s+)?\p{L}+|\bfish (?:out|them|it)\b/giu;

/** Names that no table has bare, for they may be several foods; a step that speaks of them means one. */
const BARE: ReadonlySet<string> = new Set(
  ["bread", "broth", "butter", "flour", "milk", "noodles", "stock", "yogurt"].map(normaliseFood),
);

const textsOf = (step: Step): readonly string[] => [
  step.do,
  step.until ?? "",
  ...step.attend.map((one) => one.do),
  ...(step.ways?.all ?? []).map((way) => way.do),
];

const tokensOf = (text: string): readonly string[] =>
  text
    .split(/[^\p{L}\p{M}'’]+/u)
    .map(normaliseFood)
    .filter((word) => word !== "");

/** All words by which the dish itself ("the broth") or its own list may be meant; an id is a short name as well. */
function ownWords(dish: Dish, larder: Larder): ReadonlySet<string> {
  const names = dish.ingredients.flatMap(({ id, item, food, swaps }) => [
    id,
    item,
    food ?? "",
    ...swaps.map(({ use }) => use),
    ...kindNamed(item, larder).foods.flatMap(({ name, also }) => [name, ...also]),
  ]);
  const dishes = [dish.name, ...dish.says].flatMap((name) => tokensOf(name).slice(-1));
  return new Set([...dishes, ...names.flatMap(tokensOf)]);
}

const isFoodName = (name: string, { foods, groups }: Larder): boolean =>
  foods.has(name) ||
  BARE.has(name) ||
  groups.has(name) ||
  [...groups.values()].some((group) => listedPart(group, name) !== null);

/** The foods that a text names and the dish does not list, the longest names first. */
function foodsIn(text: string, own: ReadonlySet<string>, larder: Larder): readonly string[] {
  const words = tokensOf(text.replace(NOT_MEANT, " "));
  const found: string[] = [];
  let at = 0;
  while (at < words.length) {
    const lengths = Array.from({ length: LONGEST }, (_, index) => LONGEST - index);
    const runs = lengths.map((length) => words.slice(at, at + length));
    const run = runs.find((one) => isFoodName(one.join(" "), larder)) ?? [];
    if (run.some((word) => !own.has(word))) found.push(run.join(" "));
    at += Math.max(run.length, 1);
  }
  return found;
}

interface Strict {
  readonly name: DietName;
  readonly rule: string;
  readonly is: string;
  readonly because: string | null;
}

const strictOf = (diet: Diet): readonly Strict[] => [
  ...diet.allergies.map((name) => ({ name, rule: allergyWords(name), is: "an allergy", because: null })),
  ...diet.foods
    .filter(({ verdict }) => verdict === "avoided")
    .map((rule) => ({ name: rule.name, rule: foodRuleWords(rule), is: "avoided", because: rule.because })),
];

function findingOf(kind: Kind, dish: Dish, diet: Diet, { name, rule, is, because }: Strict): Finding {
  const { item } = kind;
  const says = normaliseFood(name.said) === item ? is : `${name.said}: ${is}`;
  return {
    diet: diet.name,
    rule,
    dish: dish.name,
    ingredient: item,
    verdict: "cannot tell",
    why: `A step of ${dish.name} speaks of ${item}, which is not among its ingredients (${says}).`,
    howMuch: null,
    because,
    mend: `Write ${item} among the ingredients, or take it out of the step.`,
    standIns: null,
  };
}

/**
 * What the steps speak of and the list of ingredients does not tell, where a diet avoids it: a recipe says "boil them in
 * salted water" and lists no salt. It may be only a word, so nobody can tell.
 */
export function stepFindings(dish: Dish, diets: readonly Diet[], larder: Larder): readonly Finding[] {
  const strict = diets.flatMap((diet) => strictOf(diet).map((one) => ({ diet, one })));
  if (strict.length === 0) return [];
  const own = ownWords(dish, larder);
  const named = dish.steps.flatMap(textsOf).flatMap((text) => foodsIn(text, own, larder));
  return [...new Set(named)].flatMap((name) => {
    const kind = kindNamed(name, larder);
    return strict.flatMap(({ diet, one }) => {
      const part = partOfName(kind, one.name, larder);
      const isMeant = part === "is" || part === "has" || (part === "may" && BARE.has(name));
      return isMeant ? [findingOf(kind, dish, diet, one)] : [];
    });
  });
}
