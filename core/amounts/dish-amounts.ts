import { knownIngredient } from "../food/ingredient-food.ts";
import type { FoodTable } from "../food/food.ts";
import type { Dish, Ingredient } from "../recipe/model.ts";
import { scaledList } from "../recipe/scale.ts";
import { shortAmount } from "../units/amount-words.ts";
import { inKitchenUnit } from "../units/kitchen-figure.ts";
import { compare, ONE, terms, toNumber, formatRational, type Rational } from "../units/rational.ts";
import { scaleCautions, type ScaleCaution } from "./cautions.ts";
import { eggWords } from "./egg-words.ts";
import { servingsOf } from "./factor.ts";

/** One line of the list: exact, and as a cook can measure it. */
export interface AmountLine {
  readonly ingredient: Ingredient;
  /** "1½ cups", "≈⅔ tsp", "3 medium, or 135 g beaten". */
  readonly told: string;
}

/** What goes into a dish that is made `factor` times. */
export interface DishAmounts {
  readonly dish: Dish;
  readonly factor: Rational;
  readonly servings: Rational;
  readonly lines: readonly AmountLine[];
  readonly cautions: readonly ScaleCaution[];
}

function toldOf(table: FoodTable | null, ingredient: Ingredient): string {
  const known = table === null ? null : knownIngredient(table, ingredient);
  const eggs = eggWords(ingredient, known?.ok === true ? known.value.food : null);
  return eggs ?? shortAmount(inKitchenUnit(ingredient.amount));
}

/**
 * The ingredients of a dish for a batch `factor` times as large. Amounts stay exact; only what is told is rounded.
 * @param table tells what eggs weigh; null: there is none
 */
export function dishAmounts(dish: Dish, factor: Rational, table: FoodTable | null): DishAmounts {
  // As the author wrote it where nothing changes.
  const list = compare(factor, ONE) === 0 ? dish.ingredients : scaledList(dish.ingredients, factor);
  return {
    dish,
    factor,
    servings: servingsOf(dish, factor),
    lines: list.map((ingredient) => ({ ingredient, told: toldOf(table, ingredient) })),
    cautions: scaleCautions(dish, factor),
  };
}

/** "5 1/4", or "about 4.17" where the fraction is none that a cook knows. */
export function figureTold(value: Rational): string {
  const isPlain = terms(value).denominator <= 12n;
  return isPlain ? formatRational(value) : `about ${String(Math.round(toNumber(value) * 100) / 100)}`;
}
