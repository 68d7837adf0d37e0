import * as z from "zod/mini";
import { cookingMealSchema } from "../../core/recipe/cooking-meal-schema.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { mealPath } from "../../core/sync/meal-path.ts";
import type { MealRequest } from "../../core/sync/meal-request.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

const away = "What is in it cannot be told while the server is away.";

/** Asks the server for a meal before it is begun. Error: one sentence that says why there is none. */
export async function fetchMeal(wanted: MealRequest): Promise<Result<CookingMeal, string>> {
  const response = await fetch(mealPath, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(wanted),
  }).catch(() => null);
  if (response === null) return err(away);
  const told: unknown = await response.json().catch(() => null);
  const meal = cookingMealSchema.safeParse(told);
  if (response.ok && meal.success) return ok(meal.data);
  const refused = z.object({ error: z.string() }).safeParse(told);
  return err(refused.success ? refused.data.error : away);
}
