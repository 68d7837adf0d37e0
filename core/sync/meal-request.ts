import { z } from "zod";

/** A meal with the servings that the cook has chosen for its dishes; those left out stand as in its file. */
export const mealRequest = z.strictObject({
  meal: z.string().min(1).max(100),
  servings: z.record(z.string(), z.number().int().min(1).max(100)),
});

export type MealRequest = z.infer<typeof mealRequest>;
