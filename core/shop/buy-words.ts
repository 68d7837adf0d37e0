import { listed } from "../cook/say-call.ts";
import { measured, type Measured } from "../units/amount.ts";
import { shortAmount } from "../units/amount-words.ts";
import { compare, div, mixed, mul, ratio, rational, ZERO, type Rational } from "../units/rational.ts";
import { unitWords } from "../units/unit.ts";
import { BUNDLES } from "./bundle-table.ts";
import type { BuyingLine } from "./buying-list.ts";
import type { PartNeed } from "./need.ts";

/** Nobody sells half an onion: the whole number that is at least so much. */
function ceiling(value: Rational): Rational {
  const { whole, part } = mixed(value);
  return ratio(part === ZERO ? whole : whole + 1n);
}

/** So much in a shop: things whole, for the upper end; what is measured as it is. */
function inShop(amount: Measured): string {
  const isThing = unitWords(amount.unit).dimension === "count";
  return shortAmount(isThing ? measured(ceiling(rational(amount.high)), amount.unit) : amount);
}

/** Beside other amounts a bare number would hang in the air: "1 cup and 3 pieces". */
function beside(amount: Measured): string {
  const told = inShop(amount);
  if (amount.unit !== "piece") return told;
  return `${told} ${told === "1" ? "piece" : "pieces"}`;
}

/** How many of it are to be bought; null where it is not bought by the piece. */
export function pieceCount({ parcels, pieces }: BuyingLine): Rational | null {
  if (pieces !== null) return ceiling(pieces.high);
  const [first, ...others] = parcels;
  return first?.amount.unit === "piece" && others.length === 0 ? ceiling(rational(first.amount.high)) : null;
}

const QUARTERS = ["a quarter of", "half", "three quarters of"] as const;

/** "half a head", "a head", "2 heads": what holds so many. */
function bundleWords({ food, parcels }: BuyingLine): string | null {
  const bundle = BUNDLES.get(food ?? "");
  const [first, ...others] = parcels;
  if (bundle === undefined || first?.amount.unit !== bundle.of || others.length > 0) return null;
  const { one, many } = unitWords(bundle.sold);
  const heads = div(rational(first.amount.high), ratio(bundle.holds));
  const quarters = Number(mixed(ceiling(mul(heads, ratio(4)))).whole);
  if (quarters > 4) return `about ${String(mixed(ceiling(heads)).whole)} ${many}`;
  return `about ${[QUARTERS[quarters - 1] ?? "", "a", one].join(" ").trim()}`;
}

/** A lighter spoonful is told by its spoon alone: few scales at home show it. */
const leastTold = ratio(5);

/** Grams rounded up to what a shopper asks for: "about 170 g", "about 1.3 kg"; null for next to nothing. */
function weightWords(grams: Rational): string | null {
  if (compare(grams, leastTold) < 0) return null;
  const steps: readonly (readonly [number, number])[] = [
    [10, 1],
    [100, 5],
    [1000, 10],
  ];
  const step = steps.find(([below]) => compare(grams, ratio(below)) < 0)?.[1] ?? 100;
  const up = mul(ceiling(div(grams, ratio(step))), ratio(step));
  const isLarge = compare(up, ratio(1000)) >= 0;
  return `about ${shortAmount(measured(isLarge ? div(up, ratio(1000)) : up, isLarge ? "kg" : "g"))}`;
}

/** The weight as bought, where the amount does not tell it; of what is sold whole and used in part, that part's. */
function weighed({ parcels, grams, boughtGrams }: BuyingLine): string | null {
  if (grams === null || boughtGrams === null) return null;
  const dimensions = parcels.map(({ amount }) => unitWords(amount.unit).dimension);
  if (dimensions.every((one) => one === "mass") && boughtGrams === grams.high) return null;
  const words = weightWords(boughtGrams);
  const isCut = parcels.some(
    ({ amount }, index) => dimensions[index] === "count" && mixed(rational(amount.high)).part !== ZERO,
  );
  return words !== null && isCut ? `${words} of it` : words;
}

/** "7 tbsp juice", "the juice of 2". */
export function ofPart(amount: Measured, part: string): string {
  const told = shortAmount(amount);
  return amount.unit === "piece" ? `the ${part} of ${told}` : `${told} ${part}`;
}

const partWords = ({ part, parcels }: PartNeed): string =>
  parcels.map(({ amount }) => ofPart(amount, part)).join(" and ");

/**
 * What to buy of a line, short: "9 cloves, about a head", "3, for 7 tbsp juice", "2 cups and 1 can, about 400 g". Whole
 * things, for the upper end of a range; weights as bought, rounded up. Empty where nothing says how much.
 */
export function buyWords(line: BuyingLine): string {
  const isOne = line.parcels.length === 1 && line.pieces === null;
  const own = listed(line.parcels.map(({ amount }) => (isOne ? inShop(amount) : beside(amount))));
  if (line.pieces !== null) {
    const count =
      compare(line.pieces.high, ZERO) > 0 ? shortAmount(measured(ceiling(line.pieces.high), "piece")) : "";
    const parts = line.parts.map(partWords).join(" and ");
    return [[count, own].filter((part) => part !== "").join(" and "), parts === "" ? "" : `for ${parts}`]
      .filter((part) => part !== "")
      .join(", ");
  }
  const more = bundleWords(line) ?? weighed(line);
  return [own, more ?? ""].filter((part) => part !== "").join(", ");
}
