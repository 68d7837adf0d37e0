import { Router, type Request, type Response } from "express";
import type { FoodBook } from "../../core/diet/food-book.ts";
import { packFoodBook } from "../../core/sync/food-book-packed.ts";
import { foodsPath } from "../../core/sync/foods-path.ts";
import type { Result } from "../../core/units/result.ts";
import { isOwnPage } from "./own-host.ts";

async function answer(
  book: () => Promise<Result<FoodBook, string>>,
  request: Request,
  response: Response,
): Promise<void> {
  response.set("Cache-Control", "no-store");
  // What somebody may not eat is nobody else's business.
  if (!isOwnPage(request)) {
    response
      .status(403)
      .json({ error: "What is known of foods and diets is for Stovecall's own page. Open it there." });
    return;
  }
  const read = await book();
  if (read.ok) response.json(packFoodBook(read.value));
  else response.status(503).json({ error: read.error });
}

/** GET /api/foods : what is known of foods, diets and the meals of the last days, or `{ error }` with one sentence. */
export function foodsRouter(book: () => Promise<Result<FoodBook, string>>): Router {
  const router = Router();
  router.get(foodsPath, (request, response) => answer(book, request, response));
  return router;
}
