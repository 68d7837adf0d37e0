import type { DishAmounts } from "../../core/amounts/dish-amounts.ts";
import { formatAmount } from "../../core/units/amount.ts";
import { toNumber } from "../../core/units/rational.ts";

/** The scaled lists, for another program. */
export interface AmountsJson {
  readonly why: string | null;
  readonly dishes: readonly {
    readonly dish: string;
    /** Exactly, "25/24", and as a number. */
    readonly factor: string;
    readonly times: number;
    readonly servings: number;
    readonly of: string;
    readonly ingredients: readonly {
      readonly item: string;
      readonly preparation: string | null;
      readonly optional: boolean;
      /** Exactly, as a dish file would have it. */
      readonly exact: string;
      /** As it can be measured. */
      readonly told: string;
    }[];
    readonly cautions: readonly { readonly about: string; readonly sentence: string }[];
  }[];
}

/** The lists as `amounts --json` prints them. */
export const amountsJson = (all: readonly DishAmounts[], why: string | null): AmountsJson => ({
  why,
  dishes: all.map(({ dish, factor, servings, lines, cautions }) => ({
    dish: dish.id,
    factor,
    times: toNumber(factor),
    servings: toNumber(servings),
    of: dish.yield.of,
    ingredients: lines.map(({ ingredient, told }) => ({
      item: ingredient.item,
      preparation: ingredient.preparation,
      optional: ingredient.optional,
      exact: formatAmount(ingredient.amount),
      told,
    })),
    cautions,
  })),
});
