import type { Nutrient } from "../food/nutrients.ts";
import { nutrientWords } from "../food/nutrients.ts";
import { add, mixed, mul, ratio, type Rational } from "../units/rational.ts";

/** To so many decimals, half up. */
function rounded(value: Rational, places: number): string {
  const scale = 10n ** BigInt(places);
  const { whole } = mixed(add(mul(value, ratio(scale)), ratio(1, 2)));
  return String(Number(whole) / Number(scale));
}

const ends = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`);

/** "250 percent", "90 to 110 percent". @param low 1 is the whole */
export const percentWords = (low: Rational, high: Rational): string =>
  `${ends(rounded(mul(low, ratio(100)), 0), rounded(mul(high, ratio(100)), 0))} percent`;

/** "57.8 mg": one decimal more than the tables print, so that a figure just over a limit is seen to be over it. */
export function figureWords(nutrient: Nutrient, low: Rational, high: Rational = low): string {
  const { unit, places } = nutrientWords(nutrient);
  return `${ends(rounded(low, places + 1), rounded(high, places + 1))} ${unit}`;
}
