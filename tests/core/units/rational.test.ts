import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ONE,
  add,
  compare,
  div,
  formatRational,
  fromNumber,
  mixed,
  mul,
  parseRational,
  ratio,
  rational,
  sub,
  toNumber,
} from "../../../core/units/rational.ts";
import { anyRational } from "./arbitraries.ts";

const valueOf = (text: string): unknown => {
  const read = parseRational(text);
  return read.ok ? read.value : read.error;
};

describe("exact numbers", () => {
  it("[U1] what is written reads back to the same number", () => {
    fc.assert(fc.property(anyRational, (value) => valueOf(formatRational(value)) === value));
  });

  it("[U1] the stored form survives JSON and equal numbers are the same", () => {
    fc.assert(
      fc.property(anyRational, fc.integer({ min: 1, max: 500 }), (value, factor) => {
        const [n = "", d = ""] = value.split("/");
        const blownUp = ratio(BigInt(n) * BigInt(factor), BigInt(d) * BigInt(factor));
        expect(blownUp).toBe(value);
        expect(rational(JSON.parse(JSON.stringify(value)) as string)).toBe(value);
      }),
    );
  });

  it("[U1] adding and taking away, multiplying and dividing leave no trace", () => {
    fc.assert(
      fc.property(anyRational, anyRational, (a, b) => {
        expect(sub(add(a, b), b)).toBe(a);
        if (toNumber(b) !== 0) expect(div(mul(a, b), b)).toBe(a);
      }),
    );
  });

  it("[U1] the order is the order of the real numbers", () => {
    fc.assert(
      fc.property(anyRational, anyRational, (a, b) => {
        expect(Math.sign(compare(a, b))).toBe(Math.sign(toNumber(sub(a, b))));
      }),
    );
  });

  it("[U1] the whole part and the rest make the number again, below nought too", () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 500 }), fc.integer({ min: 1, max: 60 }), (n, d) => {
        const value = ratio(n, d);
        const { whole, part } = mixed(value);
        expect(add(ratio(whole), part)).toBe(value);
        expect(toNumber(part)).toBeGreaterThanOrEqual(0);
        expect(compare(part, ONE)).toBeLessThan(0);
      }),
    );
  });

  it("[U2] the ways of writing one and a half are one number", () => {
    for (const text of ["1 1/2", "1½", "1 ½", "1.5", "3/2", "1 1⁄2", " 1  1 / 2 "]) {
      expect([text, valueOf(text)]).toEqual([text, "3/2"]);
    }
  });

  it("[U2] every vulgar fraction sign has its value", () => {
    // Unicode Character Database, property Numeric_Value of these code points (from memory).
    const signs = "½ ⅓ ⅔ ¼ ¾ ⅕ ⅖ ⅗ ⅘ ⅙ ⅚ ⅐ ⅛ ⅜ ⅝ ⅞ ⅑ ⅒".split(" ");
    const values = "1/2 1/3 2/3 1/4 3/4 1/5 2/5 3/5 4/5 1/6 5/6 1/7 1/8 3/8 5/8 7/8 1/9 1/10".split(" ");
    expect(signs.map(valueOf)).toEqual(values);
  });

  it("[U2] a decimal is the number it prints, not the one the machine rounds it to", () => {
    expect([valueOf("0.1"), valueOf(".25"), fromNumber(0.1), fromNumber(1e-7)]).toEqual([
      "1/10",
      "1/4",
      "1/10",
      "1/10000000",
    ]);
  });

  it("[U2] text that is no number is refused with a sentence", () => {
    expect(valueOf("1/0")).toBe('"1/0" divides by zero; write a fraction like 1/2.');
    for (const text of ["", "abc", "1/", "1 2", "1..5", "-", "1 1/2/3", "0x10", "1e3", "NaN"]) {
      expect(valueOf(text)).toBe(`"${text}" is not a number I can read; write it like 2, 1.5 or 1 1/2.`);
    }
  });

  it("[U1] a stored form that is none of ours is a bug and throws", () => {
    for (const text of ["1.5", "1 1/2", "", "1/", "a/b"]) {
      expect(() => rational(text)).toThrow("not a stored rational");
    }
  });
});
