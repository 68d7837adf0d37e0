import { knownIngredient } from "../food/ingredient-food.ts";
import { weigh } from "../food/weigh.ts";
import type { Dish, Ingredient } from "../recipe/model.ts";
import { add, div, ratio, ZERO, type Rational } from "../units/rational.ts";
import type { Allowance, Diet, FoodRule } from "./diet.ts";
import { DAYS, within, type EatenMeal } from "./eaten.ts";
import type { Larder } from "./groups.ts";
import { bearings } from "./judge-food.ts";
import { kindOf } from "./kind.ts";

/** So much of a food. */
export type Much = Extract<Allowance, { kind: "amount" }>;
/** So many meals with a food. */
export type Times = Extract<Allowance, { kind: "times" }>;

/** A rule with its diet and what is known of foods. */
export interface Asked {
  readonly rule: FoodRule;
  readonly diet: Diet;
  readonly larder: Larder;
}

/** Whether an ingredient counts towards a rule; null: nobody can tell. */
function counts(ingredient: Ingredient, { rule, diet, larder }: Asked): boolean | null {
  const bearing = bearings(kindOf(ingredient, larder), diet, larder).find((one) => one.rule === rule);
  if (bearing?.part === "is") return true;
  return bearing?.part === "unknown" ? null : false;
}

/** The ingredients of dishes that count towards a rule. */
export const countedIn = (dishes: readonly Dish[], asked: Asked): readonly Ingredient[] =>
  dishes.flatMap(({ ingredients }) => ingredients).filter((one) => counts(one, asked) === true);

/** The meals of a day or a week that had a food. */
export interface MealsHad {
  /** How many days ago each was. */
  readonly ago: readonly number[];
  /** How many more may have had it: a food in them is not known. */
  readonly unsure: number;
}

/** How often there was something that a rule counts. */
export function mealsHad(eaten: readonly EatenMeal[], every: Times["every"], asked: Asked): MealsHad {
  const before = within(eaten, every);
  const sure = before.filter(({ dishes }) => countedIn(dishes, asked).length > 0);
  const unsure = before.filter(
    (meal) =>
      !sure.includes(meal) &&
      meal.dishes.some(({ ingredients }) => ingredients.some((one) => counts(one, asked) === null)),
  );
  return { ago: sure.map(({ daysAgo }) => daysAgo), unsure: unsure.length };
}

const days = (count: number): string => (count === 1 ? "tomorrow" : `in ${count} days`);

/** When enough meals have gone out of the day or week. @param ago of each meal that counts, in days */
export function mayAgain(ago: readonly number[], { times, every }: Times): string {
  const newestFirst = ago.toSorted((a, b) => a - b);
  const last = newestFirst[times - 1] ?? 0;
  return `It may be had again ${days(DAYS[every] - last)}.`;
}

/** How much of an allowance is used up; 1 is all of it. */
export interface Share {
  readonly low: Rational;
  readonly high: Rational;
  /** What could not be weighed. */
  readonly unknown: readonly string[];
}

const NONE: Share = { low: ZERO, high: ZERO, unknown: [] };

const together = (a: Share, b: Share): Share => ({
  low: add(a.low, b.low),
  high: add(a.high, b.high),
  unknown: [...a.unknown, ...b.unknown],
});

function shareOf(ingredient: Ingredient, servings: number, { larder }: Asked, much: Much): Share {
  const known = knownIngredient(larder.foods, ingredient);
  const unknown: Share = { ...NONE, unknown: [ingredient.item] };
  if (!known.ok || ingredient.amount.kind === "to-taste") return unknown;
  const { food, weight: is } = known.value;
  // What a diet allows is what is eaten, without peel and stones.
  const may = weigh(food, much.amount, food.name, "edible weight");
  if (!is.ok || !may.ok) return unknown;
  const one = ratio(servings);
  const low = ingredient.optional ? ZERO : div(div(is.value.low, may.value.high), one);
  return { low, high: div(div(is.value.high, may.value.low), one), unknown: [] };
}

/** What a serving of each of some dishes has of an allowance. */
export const shareIn = (dishes: readonly Dish[], asked: Asked, much: Much): Share =>
  dishes
    .flatMap((dish) => countedIn([dish], asked).map((one) => shareOf(one, dish.yield.servings, asked, much)))
    .reduce(together, NONE);

/** The same over several meals. */
export const shareOver = (meals: readonly (readonly Dish[])[], asked: Asked, much: Much): Share =>
  meals.map((dishes) => shareIn(dishes, asked, much)).reduce(together, NONE);
