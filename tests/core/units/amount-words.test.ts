import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Amount } from "../../../core/units/amount.ts";
import { measured, parseAmount } from "../../../core/units/amount.ts";
import {
  parseSpokenAmount,
  shortAmount,
  spokenAmount,
  spokenConversion,
} from "../../../core/units/amount-words.ts";
import { inKitchenUnit, isMetric, kitchenFigure } from "../../../core/units/kitchen-figure.ts";
import { convert } from "../../../core/units/measures.ts";
import type { Rational } from "../../../core/units/rational.ts";
import { abs, compare, mul, ratio, sub, toNumber } from "../../../core/units/rational.ts";
import { spokenWords } from "../../../core/units/spoken-words.ts";
import type { Unit } from "../../../core/units/unit.ts";
import { anyAmount, anyUnit, positive } from "./arbitraries.ts";

function amountOf(text: string): Amount {
  const read = parseAmount(text);
  if (!read.ok) throw new Error(read.error);
  return read.value;
}

describe("amounts aloud", () => {
  it.each([
    ["1 1/2 tbsp", "one and a half tablespoons", "1½ tbsp"],
    ["1/4 cup", "a quarter cup", "¼ cup"],
    ["3/4 cup", "three quarters of a cup", "¾ cup"],
    ["1/3 cup", "a third of a cup", "⅓ cup"],
    ["1/2 tsp", "half a teaspoon", "½ tsp"],
    ["1/8 tsp", "an eighth of a teaspoon", "⅛ tsp"],
    ["1/2 oz", "half an ounce", "½ oz"],
    ["1 cup", "one cup", "1 cup"],
    ["2 cloves", "two cloves", "2 cloves"],
    ["2-3 cups", "two to three cups", "2–3 cups"],
    ["1/2-3/4 cup", "half to three quarters of a cup", "½–¾ cup"],
    ["1/2-2 cups", "half a cup to two cups", "½–2 cups"],
    ["a pinch", "a pinch", "1 pinch"],
    ["250 g", "two hundred fifty grams", "250 g"],
    ["1.5 kg", "one and a half kilograms", "1.5 kg"],
    ["1.2 l", "one point two liters", "1.2 l"],
    ["1/4 head", "a quarter of a head", "¼ head"],
    ["3", "three", "3"],
    ["to taste", "to taste", "to taste"],
  ])("[U16] %s is said '%s' and shown '%s'", (text, said, shown) => {
    expect([spokenAmount(amountOf(text)), shortAmount(amountOf(text))]).toEqual([said, shown]);
  });

  it.each([
    ["333 1/3 g", "about three hundred thirty-three grams", "≈333 g"],
    ["17/16 tsp", "a little over one teaspoon", "≈1 tsp"],
    ["7/16 cup", "a little under half a cup", "≈½ cup"],
    ["12 3/16 cups", "about twelve cups", "≈12 cups"],
    ["1/100 tsp", "less than an eighth of a teaspoon", "<⅛ tsp"],
  ])("[U16] %s cannot be measured, so it is said '%s' and shown '%s'", (text, said, shown) => {
    expect([spokenAmount(amountOf(text)), shortAmount(amountOf(text))]).toEqual([said, shown]);
  });

  it("[U16] rounding is always told, never to nothing, and never far off", () => {
    fc.assert(
      fc.property(positive, anyUnit, (value, unit) => {
        const figure = kitchenFigure(value, unit);
        expect(figure.rounding === "exact").toBe(figure.value === value);
        expect(toNumber(figure.value)).toBeGreaterThan(0);
        const off = abs(sub(figure.value, value));
        const isWithin = (most: Rational): boolean => compare(off, most) <= 0;
        if (figure.rounding === "about") expect(isWithin(mul(value, ratio(1, 20)))).toBe(true);
        if (figure.rounding !== "less than")
          expect(isWithin(isMetric(unit) ? ratio(1, 2) : ratio(1, 4))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it("[U16] an exact amount, said aloud, is understood as itself", () => {
    fc.assert(
      fc.property(anyAmount, (amount) => {
        fc.pre(amount.kind === "measured");
        const said = spokenAmount(amount);
        fc.pre(!/about|a little|less than/.test(said));
        const words = spokenWords(said);
        expect([said, parseSpokenAmount(words, 0)]).toEqual([said, { value: amount, next: words.length }]);
      }),
      { numRuns: 2000 },
    );
  });

  it.each<[string, string, Unit, number]>([
    ["a quarter of a cup of miso", "1/4", "cup", 5],
    ["an imperial fluid ounce", "1/1", "imperial-fl-oz", 4],
    ["three quarters of an imperial pint", "3/4", "imperial-pint", 6],
    ["half a teaspoon", "1/2", "tsp", 3],
    ["a pinch of salt", "1/1", "pinch", 2],
    ["three onions", "3/1", "piece", 1],
  ])("[U16] '%s' is understood", (text, value, unit, next) => {
    expect(parseSpokenAmount(spokenWords(text), 0)).toEqual({
      value: measured(ratio(...parts(value)), unit),
      next,
    });
  });

  it.each(["a timer", "cups", "the", "zero cups", ""])("[U16] no amount is heard in '%s'", (text) => {
    expect(parseSpokenAmount(spokenWords(text), 0)).toBeNull();
  });

  it.each([
    ["12 tsp", "a quarter cup"],
    ["1/16 cup", "one tablespoon"],
    ["6 tsp", "two tablespoons"],
    ["1/6 cup", "two and two thirds tablespoons"],
    ["7/16 cup", "seven tablespoons"],
    ["1000 g", "one kilogram"],
    ["0.3 kg", "three hundred grams"],
    ["24 oz", "one and a half pounds"],
    ["3 tbsp", "three tablespoons"],
    ["3 cloves", "three cloves"],
  ])("[U17] %s becomes %s", (text, said) => {
    expect(spokenAmount(inKitchenUnit(amountOf(text)))).toBe(said);
  });

  it("[U17] moving to another unit changes nothing but the unit", () => {
    fc.assert(
      fc.property(anyAmount, (amount) => {
        const moved = inKitchenUnit(amount);
        if (amount.kind === "to-taste") expect(moved).toEqual(amount);
        else expect(convert(moved, amount.unit)).toEqual({ ok: true, value: amount });
      }),
    );
  });

  it.each<[string, Unit, string]>([
    ["1/4 cup", "tbsp", "four tablespoons"],
    ["1 tbsp", "tsp", "three teaspoons"],
    ["1 quart", "cup", "four cups"],
    ["1 cup", "ml", "about two hundred thirty-seven milliliters"],
    ["1 lb", "g", "about four hundred fifty-four grams"],
    ["100 ml", "cup", "a little over three eighths of a cup"],
  ])("[U18] %s in %s: %s", (text, unit, said) => {
    expect(spokenConversion(amountOf(text), unit)).toEqual({ ok: true, value: said });
  });

  it("[U18] what cannot be converted is answered with the reason", () => {
    expect(spokenConversion(amountOf("1 cup"), "g")).toEqual({
      ok: false,
      error: "Cups measure volume and grams measure weight. Weigh it, or ask for a volume.",
    });
  });
});

function parts(stored: string): [number, number] {
  const [n = "0", d = "1"] = stored.split("/");
  return [Number(n), Number(d)];
}
