import { checkMeal } from "../../../core/diet/check.ts";
import { dietsIn, type FoodBook } from "../../../core/diet/food-book.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { dietAnswer } from "../../../core/sync/diet-answer.ts";
import type { DietAnswer } from "../../../core/sync/protocol.ts";

/** What the diets that hold say of a meal as it stands; null: none holds. */
export const dietSays = (meal: CookingMeal, book: FoodBook): DietAnswer | null =>
  dietAnswer(dietsIn(book, meal.id), book.eaten, (held, eaten) => checkMeal(meal, held, book.larder, eaten));
