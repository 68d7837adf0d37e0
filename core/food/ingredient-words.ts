import type { Amount } from "../units/amount.ts";
import { spokenAmount } from "../units/amount-words.ts";
import { kitchenFigure } from "../units/kitchen-figure.ts";
import { ONE, compare, rational } from "../units/rational.ts";
import { unitWords } from "../units/unit.ts";
import { pluralOf, singularOf } from "./names.ts";

/** "an onion", "a head of garlic". */
const article = (noun: string): string => (/^(?:[aeio]|un(?!i))/i.test(noun) ? "an" : "a");

/** A counted food with its number: "two carrots", "half an onion", "one and a half onions". */
function counted(amount: Amount & { readonly kind: "measured" }, item: string): string {
  const high = kitchenFigure(rational(amount.high), amount.unit).value;
  const number = spokenAmount(amount);
  if (compare(high, ONE) > 0) return `${number} ${pluralOf(item)}`;
  const one = singularOf(item);
  if (compare(high, ONE) === 0) return `${number} ${one}`;
  return /half$/.test(number) ? `${number} ${article(one)} ${one}` : `${number} of ${article(one)} ${one}`;
}

/** "two garlic cloves" is said rather than "two cloves of garlic cloves": the item may name its own part. */
function namesUnit(item: string, one: string, many: string): boolean {
  return item.endsWith(` ${one}`) || item.endsWith(` ${many}`);
}

/**
 * An amount with its food, as a cook says it: "one and a half tablespoons of soy sauce", "two carrots",
 * "half an onion", "two garlic cloves", "salt to taste". Rounded for the kitchen as `spokenAmount` does.
 * @param item the food as spoken, lower case, singular or plural: "red lentils"
 */
export function spokenIngredient(amount: Amount, item: string): string {
  if (amount.kind === "to-taste") return `${item} to taste`;
  if (amount.unit === "piece") return counted(amount, item);
  const words = unitWords(amount.unit);
  if (namesUnit(item, words.one, words.many)) return counted({ ...amount, unit: "piece" }, item);
  return `${spokenAmount(amount)} of ${item}`;
}
