import type { MealCard } from "../../../core/sync/protocol.ts";
import type { Galley } from "../galley.ts";
import type { MealRequest } from "../../../core/sync/meal-request.ts";
import type { BuyingDesk } from "../../kitchen/buying-model.ts";

/** What is wanted of the list: one for a meal, or the one that is kept. */
export type Shopping = { readonly for: "meal"; readonly meal: MealRequest } | { readonly for: "kept" };

export interface BuyingProps {
  readonly galley: Galley;
  readonly desk: BuyingDesk;
  /** The meals that a list can be made for. */
  readonly meals: readonly MealCard[];
  readonly shopping: Shopping;
  readonly onClose: () => void;
}

/** The meal as its file has it. */
export const asInFile = ({ id, dishes }: MealCard): MealRequest => ({
  meal: id,
  servings: Object.fromEntries(dishes.map((dish) => [dish.id, dish.servings])),
  swaps: [],
});
