import type { DishId } from "../recipe/model.ts";
import type { Instant } from "../units/quantity.ts";
import type { Rational } from "../units/rational.ts";
import type { LeftoverId, MadeMeal, Place, Portion, Rest } from "./leftover.ts";

/** About what is left of a meal. */
export type LeftoverOrder =
  | {
      readonly type: "StoreLeftover";
      readonly id: LeftoverId;
      /** A dish of the meal that was cooked last; null: something else, by its name alone. */
      readonly dish: DishId | null;
      readonly name: string;
      readonly rest: Rest;
      readonly place: Place;
    }
  /** null: all of it. */
  | { readonly type: "EatLeftover"; readonly id: LeftoverId; readonly servings: Rational | null }
  /** null: all of it. */
  | { readonly type: "HeatLeftover"; readonly id: LeftoverId; readonly some: Portion | null }
  | { readonly type: "ThrowAwayLeftover"; readonly id: LeftoverId };

/** About the meal that was cooked last. */
export type MadeOrder =
  | { readonly type: "FinishDish"; readonly dish: DishId }
  | { readonly type: "BeginCooling"; readonly dish: DishId; readonly since: Instant }
  | { readonly type: "EndCooling"; readonly dish: DishId }
  | { readonly type: "SilenceReminders" };

/** About what is to be bought, by name: the same thing under another number or with an article is the same. */
export type WantedOrder =
  | {
      readonly type: "WantThing" | "DropThing" | "BuyThing" | "UnbuyThing";
      readonly name: string;
    }
  /** What was bought goes off the list. */
  | { readonly type: "ClearBought" };

/** What the cook wants to happen in the house, on whatever evening. */
export type HouseOrder =
  | LeftoverOrder
  | MadeOrder
  | WantedOrder
  /** Only the server gives it: it knows the recipes and the evening. */
  | { readonly type: "NoteMeal"; readonly made: MadeMeal }
  | { readonly type: "UndoLast" };

/** An order with the moment and the id that the shell gave it. A repeated id is carried out once. */
export interface HouseCommand {
  readonly id: string;
  readonly at: Instant;
  readonly order: HouseOrder;
}
