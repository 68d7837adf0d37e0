import type { Unit } from "./unit.ts";

/** Whose cups, pints and spoons bare names mean. */
export const MEASURE_SYSTEMS = ["us", "imperial", "australian", "metric"] as const;
export type MeasureSystem = (typeof MEASURE_SYSTEMS)[number];

/** Names that mean another size elsewhere; all others mean the same everywhere. */
const BARE = ["tsp", "tbsp", "fl-oz", "cup", "pint", "quart", "gallon"] as const satisfies readonly Unit[];
type Bare = (typeof BARE)[number];

const isBare = (unit: Unit): unit is Bare => BARE.some((bare) => bare === unit);

const IMPERIAL = {
  "fl-oz": "imperial-fl-oz",
  pint: "imperial-pint",
  quart: "imperial-quart",
  gallon: "imperial-gallon",
} as const;

/**
 * British spoons have been metric since the 1970s and the cup half a pint (GNU units: brtablespoon, brteaspoon, brcup);
 * Australia's cup and spoons are those of AS 1325 (from memory), its pints the British ones. null: there is none.
 */
const ELSEWHERE: Readonly<Record<Exclude<MeasureSystem, "us">, Readonly<Record<Bare, Unit | null>>>> = {
  imperial: { tsp: "metric-tsp", tbsp: "metric-tbsp", cup: "imperial-cup", ...IMPERIAL },
  australian: { tsp: "metric-tsp", tbsp: "australian-tbsp", cup: "metric-cup", ...IMPERIAL },
  metric: {
    tsp: "metric-tsp",
    tbsp: "metric-tbsp",
    cup: "metric-cup",
    "fl-oz": null,
    pint: null,
    quart: null,
    gallon: null,
  },
};

/** The unit that a bare name means in a system; null: it has no such measure. */
export const unitIn = (system: MeasureSystem, unit: Unit): Unit | null =>
  system === "us" || !isBare(unit) ? unit : ELSEWHERE[system][unit];
