import type { Ingredient } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import type { Amount } from "../units/amount.ts";
import { convert } from "../units/measures.ts";
import { compare, rational, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import { findFood } from "./find-food.ts";
import { boundsOf, type Bounds, type Food, type FoodTable } from "./food.ts";
import { namedFood } from "./named-food.ts";
import { eachNutrient } from "./nutrients.ts";
import { weigh, type Weight } from "./weigh.ts";

/**
 * The foods that a dish file's `food` names: one, or "blueberry or raspberry" where it may be any of them or a mixture.
 * Error: one sentence for the first name that is no food, or may be several.
 */
export function namedFoods(table: FoodTable, names: string): Result<readonly Food[], string> {
  const read = names.split(/\s+or\s+/i).map((name) => namedFood(table, name));
  const wrong = read.find((one) => !one.ok);
  return wrong?.ok === false ? wrong : ok(read.flatMap((one) => (one.ok ? [one.value] : [])));
}

const least = (a: Rational, b: Rational): Rational => (compare(a, b) <= 0 ? a : b);
const most = (a: Rational, b: Rational): Rational => (compare(a, b) >= 0 ? a : b);

const across = (all: readonly Bounds[]): Bounds =>
  all.reduce((a, b) => ({ low: least(a.low, b.low), high: most(a.high, b.high) }));

/** What holds for each of several foods, and so for any mixture of them. */
function anyOf(foods: readonly Food[]): Food | null {
  const [first, ...others] = foods;
  if (first === undefined || others.length === 0) return first ?? null;
  const numbers = foods.flatMap(({ ndb }) => (ndb === null ? [] : [ndb]));
  const labels = foods.flatMap(({ label }) => (label === null ? [] : [label]));
  const bounds = eachNutrient((nutrient) => {
    const known = foods.flatMap((food) => boundsOf(food, nutrient) ?? []);
    return known.length === foods.length ? across(known) : null;
  });
  return {
    name: listed(
      foods.map(({ name }) => name),
      "or",
    ),
    also: [],
    ndb: numbers.length === 0 ? null : listed(numbers, "or"),
    label: labels.length === 0 ? null : listed(labels, "or"),
    madeOf: null,
    mayHold: [],
    per100: eachNutrient((nutrient) => bounds[nutrient]?.high ?? null),
    bounds,
    refuse: others.every(({ refuse }) => refuse === first.refuse) ? first.refuse : null,
    measures: [],
  };
}

/** What an ingredient is, and what of it goes in; where it is one of several foods, between the ends of all. */
export interface Known {
  readonly food: Food;
  /** Error: one sentence that says why it cannot be known. */
  readonly weight: Result<Weight, string>;
}

function ownWeight({ weighs }: Ingredient): Weight | null {
  const mass = weighs === null ? null : convert(weighs, "g");
  if (mass?.ok !== true) return null;
  const [low, high] = [rational(mass.value.low), rational(mass.value.high)];
  return { low, high, assumed: null, note: null };
}

function weightOf(ingredient: Ingredient, foods: readonly Food[]): Result<Weight, string> {
  const own = ownWeight(ingredient);
  if (own !== null) return ok(own);
  const { item, preparation, amount } = ingredient;
  const weights: Weight[] = [];
  for (const food of foods) {
    const weight = weigh(food, amount, item, preparation);
    if (!weight.ok) return weight;
    weights.push(weight.value);
  }
  const [first, ...others] = weights;
  if (first === undefined) return err(`What ${item} weighs is not known.`);
  return ok(others.reduce((a, b) => ({ ...a, ...across([a, b]) }), first));
}

/** What tells which food an ingredient is. `amount`: left out where nothing but a name is asked about. */
export type Told = Pick<Ingredient, "item" | "preparation" | "food"> & { readonly amount?: Amount };

/** Sold in cans and jars without being another food for it. */
const IN_CANS =
  /\b(?:canned|beer|broth|butter|capers|cocoa|coffee|drink|fat|ghee|honey|horseradish|hummus|jam|jelly|juice|ketchup|lard|mayonnaise|milk|miso|molasses|mustard|oil|olive|paste|pickle|powder|puree|salsa|sauce|sauerkraut|syrup|tahini|vinegar|water|wine|yeast|yogurt)\b/;

/** Whether the amount is of what somebody put up: "1 can tomatoes" are no fresh ones. */
export const isFromCan = ({ amount }: Omit<Told, "food">): boolean =>
  amount !== undefined && amount.kind !== "to-taste" && (amount.unit === "can" || amount.unit === "jar");

/**
 * The one food that an ingredient is by its own words, its amount among them.
 * Error: one sentence that says why it is none.
 */
export function foodAsSold(table: FoodTable, told: Omit<Told, "food">): Result<Food, string> {
  const { item, preparation } = told;
  const food = findFood(table, item, preparation);
  if (!isFromCan(told) || (food.ok && (food.value.label !== null || IN_CANS.test(food.value.name))))
    return food;
  return findFood(table, `canned ${item}`, preparation);
}

/**
 * The foods that an ingredient is: one, or several where it may be any of them or a mixture.
 * Error: one sentence that says why it is none.
 */
export function foodsOf(table: FoodTable, told: Told): Result<readonly Food[], string> {
  if (told.food !== null) return namedFoods(table, told.food);
  const found = foodAsSold(table, told);
  return found.ok ? ok([found.value]) : found;
}

/**
 * Which food of the table or of a label an ingredient is, and what it weighs: by the `food` and `weighs` of its dish
 * file, else by its own name and the food's measures.
 * Error: one sentence that says why it is none.
 */
export function knownIngredient(table: FoodTable, ingredient: Ingredient): Result<Known, string> {
  const found = foodsOf(table, ingredient);
  if (!found.ok) return found;
  const food = anyOf(found.value);
  if (food === null) return err(`No food is named for ${ingredient.item}.`);
  return ok({ food, weight: weightOf(ingredient, found.value) });
}
