import { eachNutrient, nutrientWords, type Nutrient } from "../../core/food/nutrients.ts";
import type { Counted, DishValues, MealValues, Total, Values } from "../../core/food/values.ts";
import { valuesCaution, valuesSource } from "../../core/food/values-words.ts";
import { formatAmount } from "../../core/units/amount.ts";
import { toNumber, type Rational } from "../../core/units/rational.ts";

/** What is unknown has no figure and is not nought: it leaves the sum open above. */
interface TotalJson {
  readonly unit: string;
  /** At least this; null: nothing is known. */
  readonly low: number | null;
  /** At most this; null: nobody can tell, for an ingredient is unknown. */
  readonly high: number | null;
  readonly unknown: readonly string[];
}

type ValuesJson = Readonly<Record<Nutrient, TotalJson>>;

interface IngredientJson {
  readonly item: string;
  readonly amount: string;
  /** The food's name, and where its figures are from: the NDB number or the label's file; null: not from there. */
  readonly food: string | null;
  readonly ndb: string | null;
  readonly label: string | null;
  /** Percent of peel, stones and bones in what is bought; null: not known. */
  readonly refuse: number | null;
  /** Without refuse; null: not known, and `why` tells. */
  readonly grams: { readonly low: number; readonly high: number } | null;
  readonly assumed: string | null;
  readonly note: string | null;
  readonly why: string | null;
}

/** What a meal holds, for another program; figures to two decimals. */
export interface MealValuesJson {
  readonly meal: string;
  readonly source: string;
  readonly caution: string;
  readonly counted: number;
  readonly inAll: ValuesJson;
  /** One serving of every dish. */
  readonly aServing: ValuesJson;
  readonly dishes: readonly {
    readonly dish: string;
    readonly servings: number;
    readonly ingredients: readonly IngredientJson[];
    readonly notCounted: readonly { readonly item: string; readonly why: string }[];
    readonly inAll: ValuesJson;
    readonly aServing: ValuesJson;
  }[];
}

const figure = (value: Rational): number => Math.round(toNumber(value) * 100) / 100;

const totalJson = (nutrient: Nutrient, { low, high, unknown }: Total, counted: number): TotalJson => ({
  unit: nutrientWords(nutrient).unit,
  low: unknown.length < counted ? figure(low) : null,
  high: unknown.length === 0 ? figure(high) : null,
  unknown,
});

/** @param counted how many ingredients belong to the sums */
const jsonOf = (values: Values, counted: number): ValuesJson =>
  eachNutrient((nutrient) => totalJson(nutrient, values[nutrient], counted));

function ingredientJson(counted: Counted): IngredientJson {
  const { ingredient, food } = counted;
  const weight = counted.kind === "weighed" ? counted.weight : null;
  return {
    item: ingredient.item,
    amount: formatAmount(ingredient.amount),
    food: food?.name ?? null,
    ndb: food?.ndb ?? null,
    label: food?.label ?? null,
    refuse: food === null || food.refuse === null ? null : figure(food.refuse),
    grams: weight === null ? null : { low: figure(weight.low), high: figure(weight.high) },
    assumed: weight?.assumed ?? null,
    note: weight?.note ?? null,
    why: counted.kind === "unknown" ? counted.why : null,
  };
}

const dishJson = ({ dish, counted, notCounted, inAll, aServing }: DishValues) => ({
  dish: dish.id,
  servings: dish.yield.servings,
  ingredients: counted.map(ingredientJson),
  notCounted: notCounted.map(({ ingredient, why }) => ({ item: ingredient.item, why })),
  inAll: jsonOf(inAll, counted.length),
  aServing: jsonOf(aServing, counted.length),
});

/** The values as `values --json` prints them. */
export const valuesJson = ({ meal, dishes, inAll, aServing, counted }: MealValues): MealValuesJson => ({
  meal: meal.id,
  source: valuesSource,
  caution: valuesCaution,
  counted,
  inAll: jsonOf(inAll, counted),
  aServing: jsonOf(aServing, counted),
  dishes: dishes.map(dishJson),
});
