import type { Unit } from "../units/unit.ts";

/** What is counted in the kitchen and sold in bundles: cloves of garlic, and the head they come in. */
export interface Bundle {
  /** What recipes count. */
  readonly of: Unit;
  /** Other names of that. */
  readonly also: readonly Unit[];
  /** What the shop sells. */
  readonly sold: Unit;
  /** Another name of that. */
  readonly soldAlso: Unit;
  /** How many are in one, rather too few than too many. */
  readonly holds: number;
}

/** Bundles by the food's name in the table of foods. How many they hold: common practice, no source. */
export const BUNDLES: ReadonlyMap<string, Bundle> = new Map<string, Bundle>([
  ["garlic", { of: "clove", also: [], sold: "head", soldAlso: "bulb", holds: 10 }],
  ["celery", { of: "stalk", also: ["rib", "stick"], sold: "head", soldAlso: "bunch", holds: 8 }],
  ["scallion", { of: "piece", also: ["stalk"], sold: "bunch", soldAlso: "bunch", holds: 6 }],
]);
