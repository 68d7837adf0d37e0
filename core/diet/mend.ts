import { spokenIngredient } from "../food/ingredient-words.ts";
import type { Ingredient, Swap } from "../recipe/model.ts";
import type { Diet } from "./diet.ts";
import type { Larder } from "./groups.ts";
import { isAllowed, type Judgement } from "./judge-food.ts";
import { kindOf, type Kind } from "./kind.ts";

/** "Take two teaspoons of lemon juice instead. Add it at the end …": common practice, no source. */
function commonly({ use, amount, effect }: Swap, ingredient: Ingredient): string {
  const much = spokenIngredient(amount ?? ingredient.amount, use);
  return `Take ${much} instead.${effect === null ? "" : ` ${effect}`}`;
}

/** The same food without what is avoided, as the table may name it. */
function plainer(kind: Kind, larder: Larder): readonly string[] {
  const name = kind.foods.length === 1 ? (kind.foods[0]?.name ?? kind.item) : kind.item;
  const bare = name.replace(/\bsalted\b\s*/, "");
  const names = [
    `unsalted ${bare}`,
    `${bare} without salt`,
    bare,
    `fat-free ${bare.replace(/\b(?:whole-milk|low-fat|reduced-fat)\b\s*/, "")}`,
    bare.replace(/^drained canned|^rinsed canned|^canned/, "cooked").replace(/ with liquid$/, ""),
    bare.replace(/^canned /, "").replace(/ with liquid$/, ""),
  ];
  return [...new Set(names)].filter((one) => one !== name && larder.foods.has(one));
}

/**
 * What would mend what a diet has against an ingredient: leaving it out where the recipe can do without, what the recipe
 * itself offers instead, or the same food without what is avoided; each only where every diet allows it.
 */
export function mendFor(
  ingredient: Ingredient,
  judgement: Judgement,
  diets: readonly Diet[],
  larder: Larder,
): string | null {
  if (ingredient.optional) return "Leave it out; the recipe can do without.";
  const swaps = ingredient.swaps.filter(({ use }) => isAllowed(use, diets, larder));
  const own = swaps.find(({ isCommon }) => isCommon !== true);
  if (own !== undefined) return `Take ${own.use} instead, as the recipe offers.`;
  const kind = kindOf(ingredient, larder);
  const other = plainer(kind, larder).find((name) => isAllowed(name, diets, larder));
  if (other !== undefined) return `Take ${other} instead.`;
  const [common] = swaps;
  if (common !== undefined) return commonly(common, ingredient);
  if (judgement.verdict === "not allowed")
    return `Leave ${ingredient.item} out, or take another food for it.`;
  if (kind.foods.length === 0) return `Write in the recipe which food ${ingredient.item} is.`;
  return "Read the packet, and write in the recipe what it says.";
}
