import type { Diet } from "../diet/diet.ts";
import type { CookingMeal, DishId } from "../recipe/model.ts";
import type { DayName } from "./week-file.ts";

/** What is eaten at one time of a day. */
export type Sitting =
  /** A meal that is cooked, with the diets that hold for it. */
  | { readonly kind: "cooked"; readonly meal: CookingMeal; readonly diets: readonly Diet[] }
  /** What is left of a dish that was cooked before; null: a serving for everybody. */
  | { readonly kind: "leftover"; readonly dish: DishId; readonly servings: number | null };

/** Meals over days, in the order in which they are eaten. */
export interface Week {
  readonly name: string;
  /** How many eat each time. */
  readonly eaters: number;
  /** `number`: counted from the first day, which is 0; a day that is left out leaves a gap. */
  readonly days: readonly {
    readonly day: DayName;
    readonly number: number;
    readonly sittings: readonly Sitting[];
  }[];
}
