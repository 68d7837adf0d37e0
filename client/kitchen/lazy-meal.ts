import type { fetchMeal } from "./fetch-meal.ts";

/** A meal before it is begun; what asks for it is fetched when it is first wanted, and fails where it cannot be. */
export const lazyMeal: typeof fetchMeal = async (wanted) =>
  (await import("./fetch-meal.ts")).fetchMeal(wanted);
