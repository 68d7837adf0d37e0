import type { Amount, Measured } from "../units/amount.ts";
import { convert } from "../units/measures.ts";
import { compare, div, rational, ratio } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import type { Unit } from "../units/unit.ts";
import { unitWords } from "../units/unit.ts";

/** More than this many times the amount was misheard or mistyped. */
const mostTimes = ratio(12);

/** The most that a home kitchen takes of anything where the recipe's unit does not tell: kilograms, liters, things. */
const most: readonly (readonly [Unit, Rational])[] = [
  ["kg", ratio(20)],
  ["l", ratio(20)],
];
const mostThings = ratio(200);

/** Units of things that a food is counted in as well as in the others of the row. Common practice, no source. */
const kin: readonly (readonly Unit[])[] = [
  ["clove", "head", "bulb"],
  ["bunch", "sprig", "stalk", "leaf"],
  ["head", "rib", "stalk", "leaf"],
  ["can", "jar", "bottle", "carton", "tub", "packet", "box", "bag"],
];
const packages: readonly Unit[] = ["can", "jar", "bottle", "carton", "tub", "packet", "box", "bag"];

/** Whether a food that the recipe has in one unit may be told in another: garlic in heads, never lemon juice in cloves. */
function isUnitFor(unit: Unit, listed: Amount): boolean {
  const { dimension } = unitWords(unit);
  if (listed.kind === "to-taste") return dimension !== "count";
  if (unit === listed.unit) return true;
  if (unitWords(listed.unit).dimension !== "count") return dimension !== "count" || packages.includes(unit);
  if (dimension === "count") return kin.some((row) => row.includes(unit) && row.includes(listed.unit));
  return dimension !== "bit" || unit === "handful";
}

/** Whether an amount can be meant where the recipe has another: its unit fits the food, and it is not many times as much. */
export function makesSense(amount: Measured, listed: Amount): boolean {
  if (!isUnitFor(amount.unit, listed)) return false;
  const like = listed.kind === "measured" ? convert(amount, listed.unit) : null;
  if (like?.ok === true && listed.kind === "measured")
    return compare(div(rational(like.value.high), rational(listed.high)), mostTimes) <= 0;
  const bound = most.find(([unit]) => convert(amount, unit).ok);
  const size = bound === undefined ? null : convert(amount, bound[0]);
  return bound !== undefined && size?.ok === true
    ? compare(rational(size.value.high), bound[1]) <= 0
    : compare(rational(amount.high), mostThings) <= 0;
}
