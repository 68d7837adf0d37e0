import { z } from "zod";

/** What is to be taken for an ingredient, by the names that the meal's own swaps have. */
export const swapChoices = z
  .array(
    z.strictObject({
      dish: z.string().min(1).max(100),
      ingredient: z.string().min(1).max(100),
      use: z.string().min(1).max(200),
    }),
  )
  .max(200)
  .readonly();

/** A meal with the servings that the cook has chosen for its dishes; those left out stand as in its file. */
export const mealRequest = z.strictObject({
  meal: z.string().min(1).max(100),
  servings: z.record(z.string(), z.number().int().min(1).max(100)),
  swaps: swapChoices.default([]),
});

export type MealRequest = z.infer<typeof mealRequest>;
