import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatAmount, measured, parseAmount, scaleAmount } from "../../../core/units/amount.ts";
import { mul, ratio } from "../../../core/units/rational.ts";
import type { Unit } from "../../../core/units/unit.ts";
import { UNIT_IDS, findUnit, unitWords } from "../../../core/units/unit.ts";
import { anyAmount, positive } from "./arbitraries.ts";

const exact = (value: string, unit: Unit): unknown => ({ kind: "measured", low: value, high: value, unit });
const range = (low: string, high: string, unit: Unit): unknown => ({ kind: "measured", low, high, unit });

describe("amounts as written", () => {
  it("[U3] an amount as written reads back to the same amount", () => {
    fc.assert(
      fc.property(anyAmount, (amount) => {
        expect(parseAmount(formatAmount(amount))).toEqual({ ok: true, value: amount });
      }),
    );
  });

  it.each<[string, unknown]>([
    ["1 1/2 cups", exact("3/2", "cup")],
    ["1-1/2 cups", exact("3/2", "cup")],
    ["½ tsp.", exact("1/2", "tsp")],
    ["2-3 cloves", range("2/1", "3/1", "clove")],
    ["1/2–3/4 cup", range("1/2", "3/4", "cup")],
    ["1 1/2 to 2 cups", range("3/2", "2/1", "cup")],
    ["0.5-1 tsp", range("1/2", "1/1", "tsp")],
    ["250g", exact("250/1", "g")],
    ["1.5 kg", exact("3/2", "kg")],
    ["2 fl. oz.", exact("2/1", "fl-oz")],
    ["3", exact("3/1", "piece")],
    ["½", exact("1/2", "piece")],
    ["a pinch", exact("1/1", "pinch")],
    ["an ounce", exact("1/1", "oz")],
    ["1 imperial pint", exact("1/1", "imperial-pint")],
    ["To taste", { kind: "to-taste" }],
  ])("[U3] %s is understood", (text, value) => {
    expect(parseAmount(text)).toEqual({ ok: true, value });
  });

  it("[U3] a capital T is a tablespoon, a small t a teaspoon", () => {
    expect([findUnit("T"), findUnit("t"), findUnit("Tbsp"), findUnit("TSP")]).toEqual([
      "tbsp",
      "tsp",
      "tbsp",
      "tsp",
    ]);
  });

  it("[U3] no two units share a spelling", () => {
    for (const id of UNIT_IDS) {
      const { one, many, short, spellings } = unitWords(id);
      for (const spelling of [id, one, many, short, ...spellings])
        expect([spelling, findUnit(spelling)]).toEqual([spelling, id]);
    }
  });

  it.each([
    ["2 blorgs", '"blorgs" is not a unit I know; write one like cups, grams or cloves.'],
    ["3-2 cups", '"3-2 cups" runs backwards; write the smaller number first.'],
    ["1 to 1/2 cups", '"1 to 1/2 cups" runs backwards; write the smaller number first.'],
    ["0 cups", '"0 cups" is nothing at all; leave the ingredient out instead.'],
    ["1/0 cup", '"1/0" divides by zero; write a fraction like 1/2.'],
    ["some", '"some" is not an amount; write a number and a unit, like 1 1/2 cups.'],
    ["", '"" is not an amount; write a number and a unit, like 1 1/2 cups.'],
    ["-2 cups", '"-2 cups" is not an amount; write a number and a unit, like 1 1/2 cups.'],
  ])("[U4] %s is refused with a sentence", (text, error) => {
    expect(parseAmount(text)).toEqual({ ok: false, error });
  });

  it("[U1] a batch scaled up and down again is the first batch", () => {
    fc.assert(
      fc.property(anyAmount, positive, (amount, factor) => {
        const inverse = factor.split("/").reverse().join("/");
        const [n = "", d = ""] = inverse.split("/");
        expect(scaleAmount(scaleAmount(amount, factor), ratio(BigInt(n), BigInt(d)))).toEqual(amount);
      }),
    );
  });

  it("[U1] scaling multiplies both ends and leaves to taste alone", () => {
    expect(scaleAmount(measured(ratio(2), "clove", ratio(3)), ratio(3, 2))).toEqual(
      measured(mul(ratio(2), ratio(3, 2)), "clove", ratio(9, 2)),
    );
    expect(scaleAmount({ kind: "to-taste" }, ratio(4))).toEqual({ kind: "to-taste" });
  });

  it("[U4] an amount that runs backwards cannot be made", () => {
    expect(() => measured(ratio(3), "cup", ratio(2))).toThrow("backwards");
  });
});
