import { spokenIngredient } from "../food/ingredient-words.ts";
import { isPlural } from "../food/names.ts";
import type { Ingredient, Swap } from "../recipe/model.ts";
import { capital } from "../units/capital.ts";
import type { Diet } from "./diet.ts";
import type { StandIn } from "./findings.ts";
import type { Larder } from "./groups.ts";
import { isAllowed, type Judgement } from "./judge-food.ts";
import type { Kind } from "./kind.ts";

const muchOf = ({ use, amount }: Swap, ingredient: Ingredient): string =>
  spokenIngredient(amount ?? ingredient.amount, use);

/** "Take two teaspoons of lemon juice instead. Add it at the end …": common practice, no source. */
const commonly = (swap: Swap, ingredient: Ingredient): string =>
  [`Take ${muchOf(swap, ingredient)} instead.`, swap.effect ?? ""].join(" ").trim();

/** A swap of an ingredient, as a finding names it. */
export const standIn = (swap: Swap, ingredient: Ingredient): StandIn => ({
  use: swap.use,
  how: [`${capital(muchOf(swap, ingredient))}.`, swap.effect ?? ""].join(" ").trim(),
});

/** What may be taken for an ingredient, by the recipe or by common practice, where every diet allows it. */
export const allowedSwaps = (
  ingredient: Ingredient,
  diets: readonly Diet[],
  larder: Larder,
): readonly Swap[] => ingredient.swaps.filter(({ use }) => isAllowed(use, diets, larder));

/**
 * What would mend what a diet has against an ingredient: leaving it out where the recipe can do without, what the recipe
 * itself offers instead, or the same food without what is avoided.
 * @param kind what the ingredient is @param swaps its `allowedSwaps`
 */
export function mendFor(
  ingredient: Ingredient,
  judgement: Judgement,
  kind: Kind,
  swaps: readonly Swap[],
): string | null {
  if (ingredient.optional) return "Leave it out; the recipe can do without.";
  const own = swaps.find(({ isCommon }) => isCommon !== true);
  if (own !== undefined) return `Take ${own.use} instead, as the recipe offers.`;
  const [common] = swaps;
  if (common !== undefined) return commonly(common, ingredient);
  if (judgement.verdict === "not allowed")
    return `Leave ${ingredient.item} out, or take another food for it.`;
  if (kind.foods.length === 0)
    return `Write in the recipe which food ${ingredient.item} ${isPlural(ingredient.item) ? "are" : "is"}.`;
  return "Read the packet, and write in the recipe what it says.";
}
