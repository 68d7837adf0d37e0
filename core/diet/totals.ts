import { eachNutrient, type Nutrient } from "../food/nutrients.ts";
import { boundsOf, type FoodTable } from "../food/food.ts";
import { knownIngredient } from "../food/ingredient-food.ts";
import { mealValues, type DishValues, type Total } from "../food/values.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import { add, div, mul, ratio, ZERO, type Rational } from "../units/rational.ts";

/** What a serving holds and weighs, of a dish or of several together. */
export interface ServingTotal {
  readonly values: Readonly<Record<Nutrient, Total>>;
  /** In grams, of what goes in. `dry`: the added water left out, since nobody knows how much of it boils away. */
  readonly weight: { readonly wet: Total; readonly dry: Total };
}

/** More than anyone adds to a serving by taste: a tablespoon. Common practice, no source. */
const MOST_TO_TASTE = ratio(15);
const HUNDRED = ratio(100);
const NOTHING: Total = { low: ZERO, high: ZERO, unknown: [] };

const addTotals = (a: Total, b: Total): Total => ({
  low: add(a.low, b.low),
  high: add(a.high, b.high),
  unknown: [...new Set([...a.unknown, ...b.unknown])],
});

/** What goes in to taste, at the most. One whose figure nobody knows stays unknown. */
function toTaste(dish: Dish, nutrient: Nutrient, table: FoodTable): Total {
  return dish.ingredients
    .filter(({ amount }) => amount.kind === "to-taste")
    .map((ingredient): Total => {
      const known = knownIngredient(table, ingredient);
      const figure = known.ok ? boundsOf(known.value.food, nutrient) : null;
      if (figure === null) return { ...NOTHING, unknown: [ingredient.item] };
      return { low: ZERO, high: mul(figure.high, div(MOST_TO_TASTE, HUNDRED)), unknown: [] };
    })
    .reduce(addTotals, NOTHING);
}

function weightOf(values: DishValues, servings: Rational, isCounted: (name: string) => boolean): Total {
  return values.counted
    .map((one): Total => {
      if (one.kind === "unknown") return { ...NOTHING, unknown: [one.ingredient.item] };
      if (!isCounted(one.food.name)) return NOTHING;
      return { low: div(one.weight.low, servings), high: div(one.weight.high, servings), unknown: [] };
    })
    .reduce(addTotals, NOTHING);
}

/** As if all that may be left out went in. */
const inFull = (dish: Dish): Dish => ({
  ...dish,
  ingredients: dish.ingredients.map((one) => ({ ...one, optional: false })),
});

function servingOf(plain: DishValues, full: DishValues, table: FoodTable): ServingTotal {
  const servings = ratio(plain.dish.yield.servings);
  const values = eachNutrient((nutrient) => {
    const { low, unknown } = plain.aServing[nutrient];
    const { high, unknown: perhaps } = full.aServing[nutrient];
    const most = { low, high, unknown: [...new Set([...unknown, ...perhaps])] };
    return addTotals(most, toTaste(plain.dish, nutrient, table));
  });
  const isWater = (name: string): boolean => name === "water";
  return {
    values,
    weight: {
      wet: weightOf(plain, servings, () => true),
      dry: weightOf(plain, servings, (name) => !isWater(name)),
    },
  };
}

/** A serving of each dish of a meal: what may be left out counts from nought, what goes in to taste up to a tablespoon. */
export function servingTotals(meal: CookingMeal, table: FoodTable): readonly ServingTotal[] {
  const plain = mealValues(meal, table).dishes;
  const full = mealValues({ ...meal, dishes: meal.dishes.map(inFull) }, table).dishes;
  return plain.flatMap((values, index) => {
    const most = full[index];
    return most === undefined ? [] : [servingOf(values, most, table)];
  });
}

/** Several servings together. */
export const sumOf = (totals: readonly ServingTotal[]): ServingTotal => ({
  values: eachNutrient((nutrient) => totals.map(({ values }) => values[nutrient]).reduce(addTotals, NOTHING)),
  weight: {
    wet: totals.map(({ weight }) => weight.wet).reduce(addTotals, NOTHING),
    dry: totals.map(({ weight }) => weight.dry).reduce(addTotals, NOTHING),
  },
});
