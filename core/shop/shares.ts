import { shortName } from "../cook/say-call.ts";
import type { CookingMeal, Dish, Ingredient } from "../recipe/model.ts";

/** An ingredient of a dish that is to be cooked. */
export interface Wanted {
  /** How the dish is told: "soup"; with its meal where two meals have it. */
  readonly dish: string;
  readonly ingredient: Ingredient;
}

/** The shortest name that means this dish and no other of the meals. */
function labelOf(dish: Dish, meal: CookingMeal, meals: readonly CookingMeal[]): string {
  const all = meals.flatMap((one) => one.dishes.map((other) => ({ other, meal: one })));
  const named = all.filter(({ other }) => shortName(other) === shortName(dish));
  if (named.length < 2) return shortName(dish).toLowerCase();
  const isAgain = named.filter(({ other }) => other.id === dish.id).length > 1;
  return isAgain ? `${dish.name} (${meal.name})` : dish.name;
}

/** Every ingredient of the meals, dish by dish. */
export function wantedOf(meals: readonly CookingMeal[]): readonly Wanted[] {
  return meals.flatMap((meal) =>
    meal.dishes.flatMap((dish) => {
      const label = labelOf(dish, meal, meals);
      return dish.ingredients.map((ingredient) => ({ dish: label, ingredient }));
    }),
  );
}
