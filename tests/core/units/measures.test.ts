import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measured } from "../../../core/units/amount.ts";
import { convert, massOf, measureOf, volumeOf } from "../../../core/units/measures.ts";
import { fromNumber, ratio, toNumber } from "../../../core/units/rational.ts";
import type { Unit } from "../../../core/units/unit.ts";
import { UNIT_IDS, unitWords } from "../../../core/units/unit.ts";
import { positive } from "./arbitraries.ts";

const size = (unit: Unit): string | undefined => measureOf(unit)?.size;
const sized = UNIT_IDS.filter((unit) => measureOf(unit) !== null);

describe("measures", () => {
  // NIST Handbook 44, appendix C, and NIST SP 811, appendix B (definitions from memory): gallon 231 in3, inch 2.54 cm,
  // pound 0.453 592 37 kg. The figures below were computed apart from this code with GNU units 2.22.
  it.each<[Unit, number]>([
    ["gallon", 3785.411784],
    ["quart", 946.352946],
    ["pint", 473.176473],
    ["cup", 236.5882365],
    ["fl-oz", 29.5735295625],
    ["tbsp", 14.78676478125],
    ["tsp", 4.92892159375],
    ["lb", 453.59237],
    ["oz", 28.349523125],
  ])("[U5] one %s has its legal size", (unit, expected) => {
    expect(size(unit)).toBe(fromNumber(expected));
  });

  // NIST, "Metric Cooking Resources: Cooking Measurement Equivalencies": figures rounded for the kitchen.
  it.each<[number, Unit, number]>([
    [1 / 4, "tsp", 1.25],
    [1 / 2, "tsp", 2.5],
    [1, "tsp", 5],
    [1, "tbsp", 15],
    [1, "fl-oz", 30],
    [1 / 4, "cup", 60],
    [1 / 2, "cup", 120],
    [3 / 4, "cup", 180],
    [1, "cup", 240],
    [1, "pint", 480],
    [1, "quart", 950],
    [1, "oz", 28],
    [4, "oz", 114],
    [1, "lb", 454],
  ])("[U5] %s %s is within 2 % of the rounded kitchen figure", (count, unit, rounded) => {
    const amount = measured(fromNumber(count), unit);
    const figure = (volumeOf(amount) ?? massOf(amount))?.low ?? NaN;
    expect(Math.abs(figure - rounded) / rounded).toBeLessThan(0.02);
  });

  it("[U6] label measures are those of 21 CFR 101.9(b)(5)(viii), apart from the cooking ones", () => {
    // Source: 21 CFR 101.9(b)(5)(viii): cup 240 mL, tablespoon 15 mL, teaspoon 5 mL, fluid ounce 30 mL.
    const labels: readonly Unit[] = ["label-cup", "label-tbsp", "label-tsp", "label-fl-oz"];
    expect(labels.map(size)).toEqual(["240/1", "15/1", "5/1", "30/1"]);
    expect(size("cup")).not.toBe(size("label-cup"));
  });

  it("[U6] imperial, metric and Australian measures have their own sizes", () => {
    // Imperial: UK gallon of 4.546 09 dm3, computed with GNU units 2.22; cup 250 mL and tablespoon 20 mL likewise.
    expect(size("imperial-pint")).toBe(fromNumber(568.26125));
    expect(size("imperial-fl-oz")).toBe(fromNumber(28.4130625));
    expect([size("metric-cup"), size("australian-tbsp")]).toEqual(["250/1", "20/1"]);
  });

  it("[U5] every size names its source", () => {
    for (const unit of sized) expect(measureOf(unit)?.source.length).toBeGreaterThan(10);
  });

  it("[U7] there and back is the same amount, between any two units of one kind", () => {
    const pair = fc
      .tuple(fc.constantFrom(...sized), fc.constantFrom(...sized))
      .filter(([a, b]) => unitWords(a).dimension === unitWords(b).dimension);
    fc.assert(
      fc.property(pair, positive, ([from, to], value) => {
        const amount = measured(value, from);
        const there = convert(amount, to);
        expect(there.ok && convert(there.value, from)).toEqual({ ok: true, value: amount });
      }),
    );
  });

  it.each<[number, Unit, Unit, string]>([
    [1 / 4, "cup", "tbsp", "4/1"],
    [1, "tbsp", "tsp", "3/1"],
    [1, "gallon", "cup", "16/1"],
    [1, "cup", "fl-oz", "8/1"],
    [1, "lb", "oz", "16/1"],
    [1, "imperial-gallon", "imperial-fl-oz", "160/1"],
  ])("[U7] %s %s in %s is exact", (count, from, to, expected) => {
    expect(convert(measured(fromNumber(count), from), to)).toEqual({
      ok: true,
      value: { kind: "measured", low: expected, high: expected, unit: to },
    });
  });

  it("[U7] a range keeps both ends", () => {
    expect(convert(measured(ratio(1, 4), "cup", ratio(1, 2)), "tbsp")).toEqual({
      ok: true,
      value: measured(ratio(4), "tbsp", ratio(8)),
    });
  });

  it("[U8] what has no fixed size is not converted", () => {
    expect(convert(measured(ratio(1), "clove"), "g")).toEqual({
      ok: false,
      error: "A clove has no fixed size, so I cannot turn it into grams.",
    });
    expect(convert(measured(ratio(1), "tsp"), "pinch")).toMatchObject({ ok: false });
    expect(convert({ kind: "to-taste" }, "g")).toMatchObject({ ok: false });
    expect(massOf(measured(ratio(1), "pinch"))).toBeNull();
  });

  it("[U8] volume never becomes weight, nor weight volume", () => {
    expect(convert(measured(ratio(1), "cup"), "g")).toEqual({
      ok: false,
      error: "Cups measure volume and grams measure weight. Weigh it, or ask for a volume.",
    });
    expect([massOf(measured(ratio(1), "fl-oz")), volumeOf(measured(ratio(1), "oz"))]).toEqual([null, null]);
  });

  it("[U7] mass and volume come out as plain numbers", () => {
    expect(massOf(measured(ratio(1), "lb", ratio(2)))).toEqual({ low: 453.59237, high: 907.18474 });
    expect(toNumber(ratio(7, 2))).toBe(3.5);
  });
});
