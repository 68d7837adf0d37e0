import { ratio, type Rational } from "../units/rational.ts";

/** What is sold only as a part of something whole: juice comes from the shop as lemons. */
export interface Part {
  /** What is bought, in the singular. */
  readonly whole: string;
  /** What is taken of it: "juice". */
  readonly part: string;
  /** What one of it yields, in grams. */
  readonly yields: Rational;
}

const part = (whole: string, of: string, yields: number, by = 1): Part => ({
  whole,
  part: of,
  yields: ratio(yields, by),
});

/**
 * Parts by their names in the table of foods. Juice and eggs: USDA SR28, file WEIGHT, "1 lemon yields 48 g" (NDB 09152),
 * "lime yields 44 g" (09160), "fruit yields 86 g" (09206), "1 large = 33 g" of white (01124) and "17 g" of yolk (01125).
 * Zest: a tablespoon (6 g, NDB 09156) from a lemon and two from an orange; common practice, no source.
 */
export const PARTS: ReadonlyMap<string, Part> = new Map([
  ["lemon juice", part("lemon", "juice", 48)],
  ["lemon zest", part("lemon", "zest", 6)],
  ["lime juice", part("lime", "juice", 44)],
  ["orange juice", part("orange", "juice", 86)],
  ["orange zest", part("orange", "zest", 12)],
  ["egg white", part("egg", "white", 33)],
  ["egg yolk", part("egg", "yolk", 17)],
]);
