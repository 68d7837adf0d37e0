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
    ["quick", true, -1, -2.1, "fifteen", "fifteen"],
    ["quick", true, -1, -1.9, "fifteen", null],
    ["quick", true, -2.1, -1, "fifty", "fifty"],
    ["quick", true, -1, -4, "fifty", null],
    ["quick", true, -4, -1, "fifteen", null],
    ["quick", true, -1, -4, "sixteen", null],
    ["quick", false, -1, -4, "fifteen", null],
    ["careful", true, -1, -2.6, "fifteen", "fifteen"],
    ["careful", true, -1, -2.4, "fifteen", null],
    ["careful", true, -1, -2.4, "fifty", "fifty"],
    ["careful", true, -1, -5.1, "fifty", "fifteen"],
    ["careful", true, -2.1, -1, "fifteen", "fifty"],
    ["careful", true, -1.9, -1, "fifteen", null],
    ["careful", true, -2.1, -1, null, "fifty"],
    ["careful", false, -1, -3.6, "fifteen", "fifteen"],
    ["careful", false, -1, -3.4, "fifteen", null],
    ["careful", false, -1, -5.1, "fifty", null],
  ] as const)(
    "[V76] by the %s network (clear: %s), with scores of %f and %f, and %s by its sound: %s",
    (by, isClear, teen, tens, sounded, settled) => {
      const pair = { teen: candidate("fifteen minutes", teen), tens: candidate("fifty minutes", tens) };
      const said = sounded === null ? null : [sounded, "minutes"];
      expect(settledNumber(pair, said, { by, isClear })?.words[0] ?? null).toBe(settled);
    },
  );
});
