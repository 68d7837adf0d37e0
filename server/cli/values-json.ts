import { eachNutrient, nutrientWords, type Nutrient } from "../../core/food/nutrients.ts";
import type { Bounds } from "../../core/food/food.ts";
import type { Counted, DishValues, MealValues, NotCounted, Total, Values } from "../../core/food/values.ts";
import { valueParts, type ValuePart } from "../../core/food/value-parts.ts";
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

/** An ingredient with the food that it was taken for. */
function foodJson({
  ingredient,
  food,
  weight,
}: Pick<ValuePart, "ingredient" | "food" | "weight">): Omit<IngredientJson, "why"> {
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
  };
}

const ingredientJson = (counted: Counted): IngredientJson => {
  const weight = counted.kind === "weighed" ? counted.weight : null;
  const why = counted.kind === "unknown" ? counted.why : null;
  return { ...foodJson({ ...counted, weight }), why };
};

const notCountedJson = (
  all: readonly NotCounted[],
): readonly { readonly item: string; readonly why: string }[] =>
  all.map(({ ingredient, why }) => ({ item: ingredient.item, why }));

const dishJson = ({ dish, counted, notCounted, inAll, aServing }: DishValues) => ({
  dish: dish.id,
  servings: dish.yield.servings,
  ingredients: counted.map(ingredientJson),
  notCounted: notCountedJson(notCounted),
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

interface EndsJson {
  readonly low: number;
  readonly high: number;
}

interface PartJson extends IngredientJson {
  /** In 100 g of the food without refuse; null: not known, and `why` tells. */
  readonly in100g: EndsJson | null;
  readonly inAll: EndsJson | null;
  readonly aServing: EndsJson | null;
}

/** Where one value of a meal comes from, for another program; figures to two decimals, in 100 g to three. */
export interface ValuePartsJson {
  readonly meal: string;
  readonly of: Nutrient;
  readonly unit: string;
  readonly source: string;
  readonly caution: string;
  readonly dishes: readonly {
    readonly dish: string;
    readonly servings: number;
    /** What brings the most first, what is unknown last. */
    readonly parts: readonly PartJson[];
    readonly notCounted: readonly { readonly item: string; readonly why: string }[];
    readonly inAll: TotalJson;
    readonly aServing: TotalJson;
  }[];
}

const fine = (value: Rational): number => Math.round(toNumber(value) * 1_000) / 1_000;
const ends = ({ low, high }: Bounds, round = figure): EndsJson => ({ low: round(low), high: round(high) });

const partJson = (part: ValuePart): PartJson => {
  const isKnown = part.kind === "known";
  return {
    ...foodJson(part),
    why: isKnown ? null : part.why,
    in100g: isKnown ? ends(part.in100g, fine) : null,
    inAll: isKnown ? ends(part.inAll) : null,
    aServing: isKnown ? ends(part.aServing) : null,
  };
};

/** The parts as `values --of VALUE --json` prints them. */
export const partsJson = (nutrient: Nutrient, { meal, dishes }: MealValues): ValuePartsJson => ({
  meal: meal.id,
  of: nutrient,
  unit: nutrientWords(nutrient).unit,
  source: valuesSource,
  caution: valuesCaution,
  dishes: dishes.map((values) => {
    const { dish, parts, notCounted, inAll, aServing } = valueParts(nutrient, values);
    return {
      dish: dish.id,
      servings: dish.yield.servings,
      parts: parts.map(partJson),
      notCounted: notCountedJson(notCounted),
      inAll: totalJson(nutrient, inAll, parts.length),
      aServing: totalJson(nutrient, aServing, parts.length),
    };
  }),
});
