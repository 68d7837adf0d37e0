import { openFoodBook } from "../../core/sync/food-book-packed.ts";
import { packedFoodBook } from "../../core/sync/food-book-schema.ts";
import { foodsPath } from "../../core/sync/foods-path.ts";
import { foodTalk } from "../../core/talk/food-talk.ts";
import type { FoodsAtHand } from "../../core/talk/model.ts";

/** Asks the server what is known of foods and diets now. Rejects where it cannot be had, or came in part. */
export async function fetchFoods(): Promise<FoodsAtHand> {
  const answer = await fetch(foodsPath);
  if (!answer.ok) throw new Error(`no foods: ${answer.status}`);
  const told: unknown = await answer.json();
  return { book: openFoodBook(packedFoodBook.parse(told)), talk: foodTalk };
}
