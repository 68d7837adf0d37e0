import { endsWords, rounded } from "../food/figures.ts";
import { mul, ratio, type Rational } from "../units/rational.ts";

/** "250 percent", "90 to 110 percent". @param low 1 is the whole */
export const percentWords = (low: Rational, high: Rational): string =>
  `${endsWords(rounded(mul(low, ratio(100)), 0), rounded(mul(high, ratio(100)), 0))} percent`;
