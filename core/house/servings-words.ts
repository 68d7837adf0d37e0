import { spokenAmount } from "../units/amount-words.ts";
import { measured } from "../units/amount.ts";
import { singularOf } from "../food/names.ts";
import { compare, formatRational, ONE } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";

/** One of a serving's name: "one bowl", "half a bowl", "two small bowls". */
const named = (servings: Rational, of: string): string => (compare(servings, ONE) > 0 ? of : singularOf(of));

/** So many servings as said: "two bowls", "one and a half bowls". */
export const servingsWords = (servings: Rational, of: string): string =>
  `${spokenAmount(measured(servings, "piece"))} ${named(servings, of)}`;

/** The same in figures: "1 1/2 bowls". */
export const servingsFigure = (servings: Rational, of: string): string =>
  `${formatRational(servings)} ${named(servings, of)}`;
