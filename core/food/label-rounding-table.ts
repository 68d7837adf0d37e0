import { ratio, type Rational } from "../units/rational.ts";
import type { Nutrient } from "./nutrients.ts";

/** By whose rules a label was printed; `exact`: an analysis, printed as it was found. */
export const ROUNDINGS = ["us", "eu", "exact"] as const;
export type Rounding = (typeof ROUNDINGS)[number];

/** What a label may print. `salt` is the EU's word for sodium times 2.5. */
export type Printed = Nutrient | "salt";

/** Printed figures up to and with `to` go by steps of `by`; null: all that are larger. */
interface Steps {
  readonly to: Rational | null;
  readonly by: Rational;
}

/** How one value is rounded before it is printed, in its own unit. */
export interface RoundingRule {
  /** Whatever is less may be printed as nought. */
  readonly noughtBelow: Rational;
  readonly steps: readonly Steps[];
}

const rule = (noughtBelow: Rational, ...steps: readonly Steps[]): RoundingRule => ({ noughtBelow, steps });
const upTo = (to: Rational, by: Rational): Steps => ({ to, by });
const beyond = (by: Rational): Steps => ({ to: null, by });

const [tenth, half, hundredth] = [ratio(1, 10), ratio(1, 2), ratio(1, 100)];

const usFat = rule(half, upTo(ratio(5), half), beyond(ratio(1)));
const usGrams = rule(half, beyond(ratio(1)));

/**
 * 21 CFR 101.9(c), as set out in the FDA's Guide to Nutrition Labeling and Education Act Requirements, attachment 7.
 * Minerals and vitamin C: "0" may be printed below two parts in a hundred of the daily value, 101.9(c)(8)(iii) and (iv);
 * tenths of a milligram where that value is below 25 mg, whole ones below 250, else tens: what the FDA said of its rule of
 * 27 May 2016. The wider of the old and the new rule where they differ.
 */
const US: Readonly<Record<Nutrient, RoundingRule>> = {
  energy: rule(ratio(5), upTo(ratio(50), ratio(5)), beyond(ratio(10))),
  protein: usGrams,
  fat: usFat,
  saturated: usFat,
  carbohydrate: usGrams,
  fibre: usGrams,
  sugars: usGrams,
  sodium: rule(ratio(5), upTo(ratio(140), ratio(5)), beyond(ratio(10))),
  potassium: rule(ratio(94), beyond(ratio(10))),
  phosphorus: rule(ratio(25), beyond(ratio(10))),
  calcium: rule(ratio(26), beyond(ratio(10))),
  iron: rule(ratio(36, 100), beyond(tenth)),
  "vitamin-c": rule(ratio(18, 10), beyond(ratio(1))),
};

const euGrams = rule(half, upTo(ratio(10), tenth), beyond(ratio(1)));
const euMinerals = rule(half, upTo(ratio(100), ratio(1)), beyond(ratio(10)));

/** The European Commission's guidance on tolerances for Regulation 1169/2011, December 2012, table 4 (from memory). */
const EU: Readonly<Record<Nutrient, RoundingRule>> = {
  energy: rule(half, beyond(ratio(1))),
  protein: euGrams,
  fat: euGrams,
  saturated: rule(tenth, upTo(ratio(10), tenth), beyond(ratio(1))),
  carbohydrate: euGrams,
  fibre: euGrams,
  sugars: euGrams,
  sodium: rule(ratio(5), upTo(ratio(400), ratio(10)), beyond(ratio(100))),
  potassium: euMinerals,
  phosphorus: euMinerals,
  calcium: euMinerals,
  iron: rule(tenth, beyond(tenth)),
  "vitamin-c": rule(tenth, upTo(ratio(10), tenth), beyond(ratio(1))),
};

/** Salt is printed by the EU's rule only. */
const SALT = rule(ratio(125, 10_000), upTo(ratio(1), hundredth), beyond(tenth));

/** How a value is rounded; null: it is not. */
export function roundingRule(rounding: Rounding, printed: Printed): RoundingRule | null {
  if (rounding === "exact") return null;
  if (printed === "salt") return SALT;
  return rounding === "us" ? US[printed] : EU[printed];
}
