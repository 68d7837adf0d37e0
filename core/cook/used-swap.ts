import type { DishId, IngredientId } from "../recipe/model.ts";

/** A swap of a meal, by its place in the list of its ingredient. */
export interface UsedSwap {
  readonly dish: DishId;
  readonly ingredient: IngredientId;
  readonly swap: number;
}
