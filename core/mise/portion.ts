import type { DishId, IngredientId, StepId } from "../recipe/model.ts";

declare const portion: unique symbol;
/** `dish/step/ingredient`: what goes in at one step. */
export type PortionId = string & { readonly [portion]: true };

/** A portion's id from its parts. */
export const portionId = (dish: DishId, step: StepId, ingredient: IngredientId): PortionId =>
  `${dish}/${step}/${ingredient}` as PortionId;

/** A portion's id as it was stored. */
export const portionOf = (text: string): PortionId => text as PortionId;
