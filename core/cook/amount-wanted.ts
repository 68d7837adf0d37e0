import type { DishId, IngredientId, StepId } from "../recipe/model.ts";
import type { Measured } from "../units/amount.ts";

/** Another amount of an ingredient: of all that its dish takes, or of what goes in at one step. */
export interface AmountWanted {
  readonly dish: DishId;
  readonly ingredient: IngredientId;
  /** null: in all. */
  readonly step: StepId | null;
  readonly amount: Measured;
}
