import type { MealCheck } from "../diet/check.ts";
import type { Diet } from "../diet/diet.ts";
import type { EatenMeal } from "../diet/eaten.ts";
import type { Result } from "../units/result.ts";
import type { DietAnswer } from "./protocol.ts";

/** The answer where nothing can be told. @param problem why, one sentence */
export const cannotTell = (problem: string): DietAnswer => {
  return { diets: [], verdict: "cannot tell", findings: [], notes: [], problem };
};

/**
 * What the diets that hold for a meal say of it; null where none does.
 * @param check holds the meal against them
 */
export function dietAnswer(
  diets: Result<readonly Diet[], string>,
  eaten: Result<readonly EatenMeal[], string>,
  check: (diets: readonly Diet[], eaten: readonly EatenMeal[]) => MealCheck,
): DietAnswer | null {
  if (!diets.ok) return cannotTell(diets.error);
  if (diets.value.length === 0) return null;
  if (!eaten.ok) return cannotTell(eaten.error);
  const { verdict, findings, notes } = check(diets.value, eaten.value);
  return { diets: diets.value.map(({ name }) => name), verdict, findings, notes, problem: null };
}
