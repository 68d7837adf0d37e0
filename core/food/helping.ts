import type { Dish } from "../recipe/model.ts";
import { singularOf } from "./names.ts";

/** What a serving of a dish is called, with its article: "a bowl", "an omelet". */
export function aHelping(dish: Dish): string {
  const helping = singularOf(dish.yield.of);
  return /^[aeiou]/.test(helping) ? `an ${helping}` : `a ${helping}`;
}
