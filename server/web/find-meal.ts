import type { Response } from "express";
import type { CookingMeal } from "../../core/recipe/model.ts";
import type { MealRequest } from "../../core/sync/meal-request.ts";
import type { Result } from "../../core/units/result.ts";

/** Looks up a meal with its dishes scaled and what is taken for what. Error: one sentence. */
export type FindMeal = (wanted: MealRequest) => Result<CookingMeal, string>;

/** Answers with one sentence, which nobody keeps. */
export function refuse(response: Response, status: 400 | 403 | 404 | 503, error: string): void {
  response.status(status).set("Cache-Control", "no-store").json({ error });
}
