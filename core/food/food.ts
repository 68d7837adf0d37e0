import type { Rational } from "../units/rational.ts";
import type { Unit } from "../units/unit.ts";
import type { Nutrient } from "./nutrients.ts";

/** The sizes that things are sorted by. */
export const SIZES = ["small", "medium", "large"] as const;
export type Size = (typeof SIZES)[number];

/** "1 cup, chopped = 160": what so much of a food weighs, without refuse. */
export interface FoodMeasure {
  readonly count: Rational;
  readonly unit: Unit;
  /** null: nothing is said of its size. */
  readonly size: Size | null;
  /** How it lies in the measure, "chopped"; null: as it is. */
  readonly how: string | null;
  readonly grams: Rational;
}

/** One food of the table. */
export interface Food {
  /** Our own name, in the singular: "dry red lentil". */
  readonly name: string;
  readonly also: readonly string[];
  /** Its number in USDA SR28, five digits. */
  readonly ndb: string;
  /** In 100 g without refuse; null: nobody has determined it, which is not nought. */
  readonly per100: Readonly<Record<Nutrient, Rational | null>>;
  /** Peel, stones and bones as bought, in percent; null: not known. */
  readonly refuse: Rational | null;
  readonly measures: readonly FoodMeasure[];
}

/** The foods by every name they have, each as `normaliseFood` gives it. */
export type FoodTable = ReadonlyMap<string, Food>;
