import type { CookingMeal } from "../../../core/recipe/model.ts";
import type { MealRequest } from "../../../core/sync/meal-request.ts";
import type { Galley } from "../galley.ts";

/** What is told of a meal that is here. */
export interface ValuesProps {
  readonly galley: Galley;
  readonly meal: CookingMeal;
}

/** What is told of a meal before it is begun. */
export interface WantedValuesProps {
  readonly galley: Galley;
  readonly wanted: MealRequest;
}
