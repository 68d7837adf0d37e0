import { z } from "zod";
import type { WrittenList } from "../shop/written-list.ts";
import { mealRequest } from "./meal-request.ts";

/** More meals than anybody shops for at once. */
const mostMeals = 20;

/** What a list of what to buy is wanted for. */
export const buyingRequest = z.strictObject({
  meals: z.array(mealRequest).min(1).max(mostMeals),
  /** What is in the house, a line for each thing. */
  house: z.string().max(4_000),
});

export type BuyingRequest = z.infer<typeof buyingRequest>;

/** The list, and the lines of the house that could not be read. */
export interface BuyingAnswer {
  readonly list: WrittenList;
  readonly mistakes: readonly { readonly line: number; readonly sentence: string }[];
}
