import { scaleAmount } from "../units/amount.ts";
import type { Amount } from "../units/amount.ts";
import { mixed, mul, ratio, ZERO } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import type { CookingMeal, Dish, DishId, Ingredient, Meal, Step } from "./model.ts";

/** More servings than any home kitchen cooks at once. */
export const MOST_SERVINGS = 100;

type Scaling = (amount: Amount) => Amount;

function scaleIngredient(ingredient: Ingredient, scaled: Scaling): Ingredient {
  return {
    ...ingredient,
    amount: scaled(ingredient.amount),
    weighs: ingredient.weighs === null ? null : scaled(ingredient.weighs),
    swaps: ingredient.swaps.map((swap) => ({
      ...swap,
      amount: swap.amount === null ? null : scaled(swap.amount),
      changes: swap.changes.map((change) => ({ ...change, amount: scaled(change.amount) })),
    })),
  };
}

/** The list for a batch `factor` times as large: amounts, own weights and swaps, all exactly. */
export const scaledList = (list: readonly Ingredient[], factor: Rational): readonly Ingredient[] =>
  list.map((one) => scaleIngredient(one, (amount) => scaleAmount(amount, factor)));

/** Pieces are whole: half a flatbread more than two makes three. */
export function scaleBatch(batch: Step["batch"], factor: Rational): Step["batch"] {
  if (batch === null) return null;
  const { whole, part } = mixed(mul(ratio(batch.of), factor));
  return { ...batch, of: Number(whole) + (part === ZERO ? 0 : 1) };
}

function scaleWays(ways: Step["ways"], factor: Rational): Step["ways"] {
  if (ways === null) return null;
  return { ...ways, all: ways.all.map((way) => ({ ...way, batch: scaleBatch(way.batch, factor) })) };
}

/**
 * The dish for another number of servings. Every amount is multiplied exactly, in the list, in the steps and in
 * the swaps, so the steps still add up to the list. Times stay: a larger pot takes longer in its own way.
 */
export function scaleDish(dish: Dish, servings: number): Dish {
  if (servings === dish.yield.servings) return dish;
  const factor = ratio(servings, dish.yield.servings);
  const scaled: Scaling = (amount) => scaleAmount(amount, factor);
  return {
    ...dish,
    yield: { ...dish.yield, servings },
    ingredients: dish.ingredients.map((ingredient) => scaleIngredient(ingredient, scaled)),
    steps: dish.steps.map((step) => ({
      ...step,
      uses: step.uses.map((use) => ({ ...use, amount: scaled(use.amount) })),
      batch: scaleBatch(step.batch, factor),
      ways: scaleWays(step.ways, factor),
    })),
  };
}

/** The servings of every dish of a meal, by the dish's id; a dish that is not named keeps the meal's own figure. */
export type Servings = Readonly<Record<string, number>>;

/**
 * The meal ready to cook: every dish looked up and scaled.
 * Errors: one sentence for a dish that is not in the pantry or not in the meal, or a number that cannot be cooked.
 */
export function cookingMeal(
  meal: Meal,
  dishes: ReadonlyMap<DishId, Dish>,
  servings: Servings = {},
): Result<CookingMeal, string> {
  const stranger = Object.keys(servings).find((id) => meal.dishes.every(({ dish }) => dish !== id));
  if (stranger !== undefined) return err(`${meal.name} has no dish "${stranger}"; choose one of its own.`);
  const scaled: Dish[] = [];
  for (const { dish: id, servings: usual } of meal.dishes) {
    const dish = dishes.get(id);
    if (dish === undefined) return err(`The dish "${id}" of ${meal.name} is not there; mend its file first.`);
    const wanted = servings[id] ?? usual;
    if (!Number.isInteger(wanted) || wanted < 1 || wanted > MOST_SERVINGS) {
      return err(
        `${dish.name} cannot be made for ${wanted}; choose a whole number from 1 to ${MOST_SERVINGS}.`,
      );
    }
    scaled.push(scaleDish(dish, wanted));
  }
  return ok({ id: meal.id, name: meal.name, dishes: scaled, kitchen: meal.kitchen });
}
