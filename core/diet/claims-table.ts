import type { Nutrient } from "../food/nutrients.ts";
import { ratio, type Rational } from "../units/rational.ts";

/** A threshold that the law ties to words on a packet. It is taken here as a measure for a dish; no dish may carry the words for it. */
export interface Claim {
  /** As a diet's file says it. */
  readonly says: string;
  readonly nutrient: Nutrient;
  /** In the value's own unit. */
  readonly figure: Rational;
  /** "below": the figure itself is too much already. */
  readonly bound: "below" | "at most" | "at least";
  /** "serving": a serving, and 50 g of it where it weighs 30 g or less. "100 g": of what is eaten. */
  readonly per: "serving" | "100 g";
  readonly source: string;
}

const SODIUM_US = "21 CFR 101.61(b)";
const FAT_US = "21 CFR 101.62(b)";
const FAT_US_C = "21 CFR 101.62(c); the part about calories is not reckoned (from memory)";
const EU = "Regulation (EC) No 1924/2006, annex";

const claim = (
  says: string,
  nutrient: Nutrient,
  bound: Claim["bound"],
  figure: Rational,
  per: Claim["per"],
  source: string,
): Claim => ({ says, nutrient, bound, figure, per, source });

/** Every threshold, by the words that name it. Those for liquids are for what is drunk; soup is for the cook to decide. */
export const CLAIMS: readonly Claim[] = [
  claim("sodium free (US)", "sodium", "below", ratio(5), "serving", SODIUM_US),
  claim("very low sodium (US)", "sodium", "at most", ratio(35), "serving", SODIUM_US),
  claim("low sodium (US)", "sodium", "at most", ratio(140), "serving", SODIUM_US),
  claim("low sodium main dish (US)", "sodium", "at most", ratio(140), "100 g", SODIUM_US),
  claim("fat free (US)", "fat", "below", ratio(1, 2), "serving", FAT_US),
  claim("low fat (US)", "fat", "at most", ratio(3), "serving", FAT_US),
  claim("low fat main dish (US)", "fat", "at most", ratio(3), "100 g", FAT_US),
  claim("low saturated fat (US)", "saturated", "at most", ratio(1), "serving", FAT_US_C),
  claim("sodium free (EU)", "sodium", "at most", ratio(5), "100 g", `${EU} (this figure from memory)`),
  claim("very low sodium (EU)", "sodium", "at most", ratio(40), "100 g", EU),
  claim("low sodium (EU)", "sodium", "at most", ratio(120), "100 g", EU),
  claim("fat free (EU)", "fat", "at most", ratio(1, 2), "100 g", EU),
  claim("low fat (EU)", "fat", "at most", ratio(3), "100 g", EU),
  claim("low fat liquid (EU)", "fat", "at most", ratio(3, 2), "100 g", EU),
  claim("low sugars (EU)", "sugars", "at most", ratio(5), "100 g", `${EU} (from memory)`),
  claim("sugars free (EU)", "sugars", "at most", ratio(1, 2), "100 g", `${EU} (from memory)`),
  claim("source of fibre (EU)", "fibre", "at least", ratio(3), "100 g", `${EU} (from memory)`),
  claim("high fibre (EU)", "fibre", "at least", ratio(6), "100 g", `${EU} (from memory)`),
];

/** The threshold that the words name; null where none does. */
export const findClaim = (says: string): Claim | null => {
  const plain = says.trim().toLowerCase().replaceAll("-", " ");
  return CLAIMS.find((one) => one.says.toLowerCase() === plain) ?? null;
};
