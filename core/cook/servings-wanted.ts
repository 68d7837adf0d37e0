import type { DishId } from "../recipe/model.ts";

/** So many servings of a dish. */
export interface ServingsWanted {
  readonly dish: DishId;
  readonly servings: number;
}
