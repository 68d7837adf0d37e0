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

/** The two ends between which a figure lies. */
export interface Bounds {
  readonly low: Rational;
  readonly high: Rational;
}

/** One food of the table, or of a label of the cook's own. */
export interface Food {
  /** Our own name, in the singular: "dry red lentil". */
  readonly name: string;
  readonly also: readonly string[];
  /** Its number in USDA SR28, five digits; null: its figures are not from there. */
  readonly ndb: string | null;
  /** The label's file, "labels/plain-oat-drink.yaml"; null: its figures are the table's. */
  readonly label: string | null;
  /** What the packet lists it as made of, foods and groups by their names; null: it is no label, or lists nothing. */
  readonly madeOf: readonly string[] | null;
  /** What the packet says that there may be traces of. */
  readonly mayHold: readonly string[];
  /** In 100 g without refuse; null: nobody has determined it, which is not nought. */
  readonly per100: Readonly<Record<Nutrient, Rational | null>>;
  /** Where the figures of `per100` may lie, for they are printed rounded; null: they are as exact as they stand. */
  readonly bounds: Readonly<Record<Nutrient, Bounds | null>> | null;
  /** Peel, stones and bones as bought, in percent; null: not known. */
  readonly refuse: Rational | null;
  readonly measures: readonly FoodMeasure[];
}

/** The foods by every name they have, each as `normaliseFood` gives it. */
export type FoodTable = ReadonlyMap<string, Food>;

/** Between which ends a figure lies in 100 g; null: nobody has determined it. */
export function boundsOf(food: Food, nutrient: Nutrient): Bounds | null {
  if (food.bounds !== null) return food.bounds[nutrient];
  const figure = food.per100[nutrient];
  return figure === null ? null : { low: figure, high: figure };
}
