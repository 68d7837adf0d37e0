import type { CookingMeal, Dish, Ingredient } from "../recipe/model.ts";
import { add, div, mul, ratio, ZERO, type Rational } from "../units/rational.ts";
import { boundsOf, type Bounds, type Food, type FoodTable } from "./food.ts";
import { eachNutrient, type Nutrient } from "./nutrients.ts";
import { knownIngredient } from "./ingredient-food.ts";
import type { Weight } from "./weigh.ts";

/** An ingredient that belongs to the sum. `why` is one sentence. */
export type Counted =
  | {
      readonly kind: "weighed";
      readonly ingredient: Ingredient;
      readonly food: Food;
      readonly weight: Weight;
    }
  | {
      readonly kind: "unknown";
      readonly ingredient: Ingredient;
      readonly food: Food | null;
      readonly why: string;
    };

/** An ingredient that is left out of the sum: nobody says how much of it goes in, or whether. */
export interface NotCounted {
  readonly ingredient: Ingredient;
  readonly why: "to taste" | "optional";
}

/** How much there is of one value: at least this where something is unknown. */
export interface Total {
  readonly low: Rational;
  readonly high: Rational;
  /** The ingredients without a figure for it, as their dish names them. They are not nought. */
  readonly unknown: readonly string[];
}

/** A total for every value. */
export type Values = Readonly<Record<Nutrient, Total>>;

/** What a dish holds. */
export interface DishValues {
  readonly dish: Dish;
  readonly counted: readonly Counted[];
  readonly notCounted: readonly NotCounted[];
  readonly inAll: Values;
  readonly aServing: Values;
}

/** What a meal holds. */
export interface MealValues {
  readonly meal: CookingMeal;
  readonly dishes: readonly DishValues[];
  readonly inAll: Values;
  /** One serving of every dish. */
  readonly aServing: Values;
  /** How many ingredients belong to the sums. */
  readonly counted: number;
}

const HUNDRED = ratio(100);
const NOTHING: Total = { low: ZERO, high: ZERO, unknown: [] };

/** Two amounts of one value together. */
export const addTotals = (a: Total, b: Total): Total => ({
  low: add(a.low, b.low),
  high: add(a.high, b.high),
  unknown: [...a.unknown, ...b.unknown],
});

const sum = (all: readonly Values[]): Values =>
  eachNutrient((nutrient) => all.map((values) => values[nutrient]).reduce(addTotals, NOTHING));

const share = (values: Values, servings: number): Values =>
  eachNutrient((nutrient) => {
    const { low, high, unknown } = values[nutrient];
    return { low: div(low, ratio(servings)), high: div(high, ratio(servings)), unknown };
  });

function count(ingredient: Ingredient, table: FoodTable): Counted {
  const known = knownIngredient(table, ingredient);
  if (!known.ok) return { kind: "unknown", ingredient, food: null, why: known.error };
  const { food, weight } = known.value;
  return weight.ok
    ? { kind: "weighed", ingredient, food, weight: weight.value }
    : { kind: "unknown", ingredient, food, why: weight.error };
}

/** How much of a value an ingredient brings in all; null: nobody knows. */
export function bringsOf(counted: Counted, nutrient: Nutrient): Bounds | null {
  const figure = counted.kind === "weighed" ? boundsOf(counted.food, nutrient) : null;
  if (counted.kind === "unknown" || figure === null) return null;
  const { low, high } = counted.weight;
  return { low: mul(low, div(figure.low, HUNDRED)), high: mul(high, div(figure.high, HUNDRED)) };
}

function valuesOf(counted: Counted): Values {
  return eachNutrient((nutrient) => {
    const brings = bringsOf(counted, nutrient);
    return brings === null ? { ...NOTHING, unknown: [counted.ingredient.item] } : { ...brings, unknown: [] };
  });
}

function whyNot({ amount, optional }: Ingredient): NotCounted["why"] | null {
  if (amount.kind === "to-taste") return "to taste";
  return optional ? "optional" : null;
}

function dishValues(dish: Dish, table: FoodTable): DishValues {
  const notCounted = dish.ingredients.flatMap((ingredient) => {
    const why = whyNot(ingredient);
    return why === null ? [] : [{ ingredient, why }];
  });
  const counted = dish.ingredients
    .filter((ingredient) => whyNot(ingredient) === null)
    .map((ingredient) => count(ingredient, table));
  const inAll = sum(counted.map(valuesOf));
  return { dish, counted, notCounted, inAll, aServing: share(inAll, dish.yield.servings) };
}

const named = (values: Values, dish: Dish): Values =>
  eachNutrient((nutrient) => ({
    ...values[nutrient],
    unknown: values[nutrient].unknown.map((item) => `${item} (${dish.name})`),
  }));

/**
 * What a meal and its dishes hold by the table of foods and the cook's labels in it: the figures of what goes in, added up. Nothing is reckoned for
 * what cooking destroys, drains off or leaves in the pan, nor for swaps.
 */
export function mealValues(meal: CookingMeal, table: FoodTable): MealValues {
  const dishes = meal.dishes.map((dish) => dishValues(dish, table));
  return {
    meal,
    dishes,
    inAll: sum(dishes.map(({ dish, inAll }) => named(inAll, dish))),
    aServing: sum(dishes.map(({ dish, aServing }) => named(aServing, dish))),
    counted: dishes.reduce((total, { counted }) => total + counted.length, 0),
  };
}
