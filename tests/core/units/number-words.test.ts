import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  decimalWords,
  numberWords,
  parseSpokenNumber,
  spokenNumber,
} from "../../../core/units/number-words.ts";
import { ratio } from "../../../core/units/rational.ts";
import { spokenWords } from "../../../core/units/spoken-words.ts";

const read = (text: string): unknown => parseSpokenNumber(spokenWords(text), 0);

/** The whole text is the number. */
const whole = (text: string, value: string): unknown => ({ value, next: spokenWords(text).length });

describe("spoken numbers", () => {
  it("[U15] every whole number to 9,999, said aloud, is understood as itself", () => {
    for (let n = 0; n <= 9999; n += 1) {
      const said = numberWords(n);
      expect([n, read(said)]).toEqual([n, whole(said, ratio(n))]);
    }
  });

  it("[U15] every mixed number to 9,999, said aloud, is understood as itself", () => {
    const mixedNumber = fc.tuple(fc.nat(9999), fc.nat(9998), fc.integer({ min: 1, max: 9999 }));
    fc.assert(
      fc.property(mixedNumber, ([count, n, d]) => {
        const value = ratio(count * d + (n % d), d);
        const said = spokenNumber(value);
        expect([said, read(said)]).toEqual([said, whole(said, value)]);
      }),
      { numRuns: 1000 },
    );
  });

  it("[U15] every kitchen fraction, said aloud, is understood as itself", () => {
    for (let d = 2; d <= 20; d += 1) {
      for (let n = 1; n < 12 * d; n += 1) {
        const said = spokenNumber(ratio(n, d));
        expect([said, read(said)]).toEqual([said, whole(said, ratio(n, d))]);
      }
    }
  });

  it("[U15] a decimal, said figure by figure, is understood as itself", () => {
    fc.assert(
      fc.property(fc.nat(999_999), fc.integer({ min: 1, max: 4 }), (n, places) => {
        const value = ratio(n, 10 ** places);
        const said = decimalWords(value, places);
        expect([said, read(said)]).toEqual([said, whole(said, value)]);
      }),
    );
  });

  it("[U16] numbers are said as a cook says them", () => {
    expect([365, 15, 25, 100, 1000, 2506, 9999].map(numberWords)).toEqual([
      "three hundred sixty-five",
      "fifteen",
      "twenty-five",
      "one hundred",
      "one thousand",
      "two thousand five hundred six",
      "nine thousand nine hundred ninety-nine",
    ]);
    expect(
      [ratio(3, 2), ratio(2, 3), ratio(1, 4), ratio(15, 4), ratio(1, 8), ratio(5, 64)].map(spokenNumber),
    ).toEqual([
      "one and a half",
      "two thirds",
      "a quarter",
      "three and three quarters",
      "an eighth",
      "five over sixty-four",
    ]);
  });

  it.each<[string, string, number]>([
    ["half a teaspoon", "1/2", 2],
    ["a half cup", "1/2", 2],
    ["a quarter of a cup", "1/4", 4],
    ["quarter cup", "1/4", 1],
    ["three quarters of an onion", "3/4", 4],
    ["three fourths", "3/4", 2],
    ["two third cup", "2/3", 2],
    ["twenty five minutes", "25/1", 2],
    ["two hundred and fifty grams", "250/1", 4],
    ["a hundred and a half", "201/2", 5],
    ["one hundred and one quarter", "401/4", 5],
    ["fifteen hundred", "1500/1", 2],
    ["a thousand and one", "1001/1", 4],
    ["a dozen eggs", "12/1", 2],
    ["half a dozen", "6/1", 3],
    ["two dozen", "24/1", 2],
    ["a couple of onions", "2/1", 3],
    ["one five minutes", "15/1", 2],
    ["three oh five", "305/1", 3],
    ["one point five liters", "3/2", 3],
    ["point two five", "1/4", 3],
    ["12 minutes", "12/1", 1],
    ["1½ cups", "3/2", 2],
    ["1-1/2 cups", "3/2", 2],
    ["1,500 g", "1500/1", 1],
    ["one and a half and more", "3/2", 4],
    ["five and ten", "5/1", 1],
    ["twenty fifth", "20/1", 1],
    ["one two hundred", "1/1", 1],
  ])("[U15] '%s' is read as %s and ends after %s words", (text, value, next) => {
    expect(read(text)).toEqual({ value, next });
  });

  it.each([
    "a timer",
    "the carrots",
    "",
    "and a half",
    "third step",
    "hundred",
    "an onion",
    "point",
    "over two",
  ])("[U15] no number is heard in '%s'", (text) => {
    expect(read(text)).toBeNull();
  });

  it("[U15] no words at all, and any words, give an answer or null but never an error", () => {
    const word = fc.constantFrom(
      ..."one two ten twenty hundred thousand and a half quarter thirds point oh of dozen couple over 3 1/2 4.5 1/0 cup".split(
        " ",
      ),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 8 }), fc.nat(8), (words, from) => {
        const found = parseSpokenNumber(words, from);
        if (found !== null) {
          expect(found.next).toBeGreaterThan(from);
          expect(found.next).toBeLessThanOrEqual(words.length);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
