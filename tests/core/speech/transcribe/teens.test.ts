import { describe, expect, it } from "vitest";
import { settledNumber, teenOrTens } from "../../../../core/speech/transcribe/teens.ts";

const candidate = (text: string, score = -1) => ({ words: text.split(" "), score });

describe("a teen or the tens of it", () => {
  it.each([
    ["set a timer for fifteen minutes", "set a timer for fifty minutes"],
    ["we eat in thirteen minutes", "we eat in thirty minutes please"],
    ["nineteen more minutes", "nine zero more minutes"],
  ])("[V76] %j and %j are one, whichever is the likelier", (teen, tens) => {
    const [one, other] = [candidate(teen), candidate(tens)];
    expect(teenOrTens(one, other)).toEqual({ teen: one, tens: other });
    expect(teenOrTens(other, one)).toEqual({ teen: one, tens: other });
  });

  it.each([
    ["set a timer for fifteen minutes", "set a timer for sixty minutes"],
    ["set a timer for fifteen minutes", "set a timer for fifteen minutes please"],
    ["set a timer for fifteen minutes", "add fifty minutes"],
    ["fifteen grams in fifteen minutes", "fifty grams in fifty minutes"],
    ["two more minutes", "twenty more minutes"],
    ["next step", "next stop"],
  ])("[V76] %j and %j are not", (one, other) => {
    expect(teenOrTens(candidate(one), candidate(other))).toBeNull();
  });

  it.each([
    [-1, -2.1, "fifteen", "fifteen"],
    [-1, -1.9, "fifteen", null],
    [-2.1, -1, "fifty", "fifty"],
    [-1, -4, "fifty", null],
    [-4, -1, "fifteen", null],
    [-1, -4, "sixteen", null],
  ])("[V76] scores of %f and %f, and %s by its sound: %s", (teen, tens, sounded, settled) => {
    const pair = { teen: candidate("fifteen minutes", teen), tens: candidate("fifty minutes", tens) };
    expect(settledNumber(pair, [sounded, "minutes"])?.words[0] ?? null).toBe(settled);
  });
});
