import type { MealCard } from "../../../core/sync/protocol.ts";
import type { BuyingRequest } from "../../../core/sync/buying-request.ts";
import type { Galley } from "../galley.ts";
import type { BuyingDesk } from "../../kitchen/buying-model.ts";

/** A meal with the servings that the cook has chosen for its dishes. */
export type MealToBuy = BuyingRequest["meals"][number];

/** What is wanted of the list: one for a meal, or the one that is kept. */
export type Shopping = { readonly for: "meal"; readonly meal: MealToBuy } | { readonly for: "kept" };

export interface BuyingProps {
  readonly galley: Galley;
  readonly desk: BuyingDesk;
  /** The meals that a list can be made for. */
  readonly meals: readonly MealCard[];
  readonly shopping: Shopping;
  readonly onClose: () => void;
}

/** The meal as its file has it. */
export const asInFile = ({ id, dishes }: MealCard): MealToBuy => ({
  meal: id,
  servings: Object.fromEntries(dishes.map((dish) => [dish.id, dish.servings])),
});
