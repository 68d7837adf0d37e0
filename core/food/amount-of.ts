import pluralize from "pluralize";
import type { Amount } from "../units/amount.ts";
import { spokenAmount } from "../units/amount-words.ts";
import { compare, ONE, rational } from "../units/rational.ts";

/**
 * An amount together with what it is of, as a cook says it: "two cloves of garlic", "one lemon",
 * "half a lemon", "three onions", "lemon juice to taste".
 * @param item the ingredient's name as its recipe writes it, in the singular or the plural
 */
export function spokenAmountOf(amount: Amount, item: string): string {
  if (amount.kind === "to-taste") return `${item} to taste`;
  const said = spokenAmount(amount);
  if (amount.unit !== "piece") return `${said} of ${item}`;
  if (compare(rational(amount.high), ONE) > 0) return `${said} ${inNumber(item, 2)}`;
  const one = inNumber(item, 1);
  if (compare(rational(amount.high), ONE) === 0) return `one ${one}`;
  const article = /^[aeiou]/i.test(one) ? "an" : "a";
  return said === "half" ? `half ${article} ${one}` : `${said} of ${article} ${one}`;
}

/** "onions" with 1 is "onion"; only the last word bends: "bay leaf", "bay leaves". */
function inNumber(item: string, count: number): string {
  const cut = item.lastIndexOf(" ") + 1;
  return `${item.slice(0, cut)}${pluralize(item.slice(cut), count)}`;
}
