import { shortName } from "../../../../core/cook/say-call.ts";
import type { CookingMeal } from "../../../../core/recipe/model.ts";

/** What no program can take off the cook's hands, as on the first page; storing as in the calendar file. */
const standing = [
  "Times are a guide: look, smell, and measure before you trust them. Never leave a hot stove alone.",
  "What you may eat is for your clinician to say: diets and allergens are not checked. Read every label.",
  "What is left goes into the fridge within two hours of serving; follow the food safety rules of where you live.",
];

/** What to take care of: the dishes' own cautions, then what holds for every meal. */
export function cautionsOf(meal: CookingMeal): readonly string[] {
  const own = meal.dishes.flatMap((dish) => dish.cautions.map((caution) => `${shortName(dish)}: ${caution}`));
  return [...own, ...standing];
}
