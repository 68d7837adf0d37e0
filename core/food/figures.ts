import { listed } from "../recipe/nearest.ts";
import { add, mixed, mul, ratio, toNumber, type Rational } from "../units/rational.ts";
import { nutrientWords, type Nutrient } from "./nutrients.ts";
import type { Total } from "./values.ts";

/** To so many decimals, half up; noughts at the end fall away. */
export function rounded(value: Rational, places: number): string {
  const scale = 10n ** BigInt(places);
  const { whole } = mixed(add(mul(value, ratio(scale)), ratio(1, 2)));
  return String(Number(whole) / Number(scale));
}

/** "250", "90 to 110". */
export const endsWords = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`);

/** "57.8 mg": one decimal more than the tables print, so that a figure just over a limit is seen to be over it. */
export function figureWords(nutrient: Nutrient, low: Rational, high: Rational = low): string {
  const { unit, places } = nutrientWords(nutrient);
  return `${endsWords(rounded(low, places + 1), rounded(high, places + 1))} ${unit}`;
}

/** "58 mg", "at least 58 mg", "50 to 60 mg", "unknown". @param counted how many ingredients belong to it */
export function totalWords(nutrient: Nutrient, { low, high, unknown }: Total, counted: number): string {
  if (unknown.length >= counted) return "unknown";
  const { unit, places } = nutrientWords(nutrient);
  // One under the other in a column, so the noughts stay.
  const written = (figure: Rational): string => toNumber(figure).toFixed(places);
  const [least, most] = [written(low), written(high)];
  return unknown.length > 0 ? `at least ${least} ${unit}` : `${endsWords(least, most)} ${unit}`;
}

/**
 * "1 of 12 ingredients has no value for it: flour."
 * @param mostNames where more have none they are counted only; else they are named too
 */
export function missingWords({ unknown }: Total, counted: number, mostNames = Infinity): string {
  const names = [...new Set(unknown)];
  const few = names.length <= mostNames ? `: ${listed(names)}` : "";
  return `${names.length} of ${counted} ingredients ${names.length === 1 ? "has" : "have"} no value for it${few}.`;
}
