import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { findUnit } from "../../../core/units/unit.ts";
import type { Unit } from "../../../core/units/unit.ts";
import { MEASURE_SYSTEMS, unitIn, type MeasureSystem } from "../../../core/units/measure-system.ts";
import { measureOf } from "../../../core/units/measures.ts";
import { fromNumber, rational, toNumber } from "../../../core/units/rational.ts";

/** Measures by the name that GNU units (Debian package `units`) has for them, and the SI unit they are asked in. */
const CALCULATED: readonly (readonly [unit: Unit, name: string, si: "ml" | "g"])[] = [
  ["tsp", "teaspoon", "ml"],
  ["tbsp", "tablespoon", "ml"],
  ["fl-oz", "floz", "ml"],
  ["cup", "cup", "ml"],
  ["pint", "pint", "ml"],
  ["quart", "quart", "ml"],
  ["gallon", "gallon", "ml"],
  ["imperial-fl-oz", "brfloz", "ml"],
  ["imperial-cup", "brcup", "ml"],
  ["imperial-pint", "brpint", "ml"],
  ["imperial-quart", "brquart", "ml"],
  ["imperial-gallon", "brgallon", "ml"],
  ["metric-cup", "metriccup", "ml"],
  ["australian-tbsp", "australiatablespoon", "ml"],
  ["cl", "centiliter", "ml"],
  ["dl", "deciliter", "ml"],
  ["l", "liter", "ml"],
  ["oz", "ounce", "g"],
  ["lb", "pound", "g"],
];

/** One of a unit by the other calculator; null where it is not installed. */
function calculated(name: string, si: string): number | null {
  const run = spawnSync("units", ["--terse", "--output-format", "%.15g", name, si], { encoding: "utf8" });
  return run.error === undefined ? Number(run.stdout) : null;
}

/** Bare names by the name that GNU units has for them in that country, and the millilitres written above the check. */
const BARE: readonly (readonly [system: MeasureSystem, name: string, theirs: string, figure: number])[] = [
  // UK Weights and Measures Act 1985, schedule 1: gallon of 4.546 09 dm3; the spoons: common practice, no source.
  ["imperial", "cup", "brcup", 284.130625],
  ["imperial", "pint", "brpint", 568.26125],
  ["imperial", "quart", "brquart", 1136.5225],
  ["imperial", "gallon", "brgallon", 4546.09],
  ["imperial", "fluid ounces", "brfloz", 28.4130625],
  ["imperial", "tablespoon", "brtablespoon", 15],
  ["imperial", "tsp", "brteaspoon", 5],
  // Standards Australia AS 1325 (from memory).
  ["australian", "cups", "metriccup", 250],
  ["australian", "tablespoons", "australiatablespoon", 20],
  ["australian", "teaspoon", "australiateaspoon", 5],
  ["australian", "pint", "brpint", 568.26125],
  ["metric", "cup", "metriccup", 250],
  // NIST Handbook 44, appendix C (from memory).
  ["us", "cup", "uscup", 236.5882365],
  ["us", "tablespoon", "ustablespoon", 14.78676478125],
  ["us", "pint", "uspint", 473.176473],
];

describe("whose measures bare names mean", () => {
  it.each(BARE)(
    "[U40] written in %s measures, a %s is %s of GNU units: %d mL",
    (system, name, theirs, figure) => {
      const unit = unitIn(system, findUnit(name) ?? "piece");
      const size = unit === null ? null : measureOf(unit)?.size;
      expect(size).toBe(fromNumber(figure));
      const other = calculated(theirs, "ml");
      if (other !== null) expect(other).toBeCloseTo(figure, 10);
    },
  );

  it("[U40] what has one size everywhere, and what says whose it is, stays as it is", () => {
    for (const system of MEASURE_SYSTEMS) {
      for (const unit of ["g", "lb", "ml", "imperial-pint", "metric-cup", "label-cup", "clove"] as const) {
        expect(unitIn(system, unit)).toBe(unit);
      }
    }
    expect(unitIn("metric", "pint")).toBeNull();
  });
});

describe("measures beside those of others", () => {
  it.each(CALCULATED)(
    "[U35] one %s is what GNU units makes of %s, where that is installed",
    (unit, name, si) => {
      const size = measureOf(unit)?.size ?? "0/1";
      const other = calculated(name, si);
      // Where the calculator is absent there is nothing to compare; the figures below hold everywhere.
      if (other !== null) expect(other).toBeCloseTo(toNumber(rational(size)), 10);
      expect(size).not.toBe("0/1");
    },
  );

  it.each<[string, number]>([
    // NIST Handbook 44, appendix C (from memory): from the gallon of 231 cubic inches and the pound of 0.453 592 37 kg.
    ["tsp", 4.92892159375],
    ["Tbsp.", 14.78676478125],
    ["fl. oz.", 29.5735295625],
    ["c.", 236.5882365],
    ["lbs.", 453.59237],
    // NIST SP 811, tables 5 and 6 (from memory): the prefixes centi and deci, and the litre.
    ["cl", 10],
    ["dl", 100],
    // UK Weights and Measures Act 1985, schedule 1: gallon of 4.546 09 dm3, by 8 and by 160.
    ["UK pint", 568.26125],
    ["UK cup", 284.130625],
    ["UK fl oz", 28.4130625],
    // Standards Australia AS 1325 (from memory).
    ["Australian cup", 250],
    ["Aus tbsp", 20],
    // 21 CFR 101.9(b)(5)(viii): household measures on labels.
    ["label cup", 240],
    ["label fl oz", 30],
  ])("[U35] one %s, as written, is %s", (written, figure) => {
    const unit = findUnit(written);
    expect(unit === null ? null : measureOf(unit)?.size).toBe(fromNumber(figure));
  });
});
