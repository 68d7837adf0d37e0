import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatClock, parseClock, parseSpokenClock, spokenClock } from "../../../core/units/clock-words.ts";
import { spokenWords } from "../../../core/units/spoken-words.ts";

const FIVE_PM = 17 * 60;
const at = (hour: number, minute = 0): number => hour * 60 + minute;

describe("time of day", () => {
  it("[U14] every minute, as said, is understood as itself from up to twelve hours before", () => {
    fc.assert(
      fc.property(fc.nat(1439), fc.nat(719), (minute, before) => {
        const reference = (minute - before + 1440) % 1440;
        expect(parseClock(spokenClock(minute), reference)).toEqual({ ok: true, value: minute });
      }),
      { numRuns: 2000 },
    );
  });

  it("[U14] every minute, as shown, is understood as itself whatever the time is now", () => {
    fc.assert(
      fc.property(fc.nat(1439), fc.nat(1439), (minute, reference) => {
        expect(parseClock(formatClock(minute), reference)).toEqual({ ok: true, value: minute });
      }),
    );
  });

  it.each<[string, number]>([
    ["half past six", at(18, 30)],
    ["six thirty", at(18, 30)],
    ["six thirty-four", at(18, 34)],
    ["six oh five", at(18, 5)],
    ["seven o'clock", at(19)],
    ["seven o’clock", at(19)],
    ["at eight", at(20)],
    ["quarter to seven", at(18, 45)],
    ["a quarter past seven", at(19, 15)],
    ["ten to seven", at(18, 50)],
    ["ten minutes to seven", at(18, 50)],
    ["twenty five past six", at(18, 25)],
    ["quarter to noon", at(11, 45)],
    ["noon", at(12)],
    ["midnight", 0],
    ["18:30", at(18, 30)],
    ["6:30", at(18, 30)],
    ["6:30 am", at(6, 30)],
    ["7pm", at(19)],
    ["7 p.m.", at(19)],
    ["eighteen thirty", at(18, 30)],
    ["twenty hundred hours", at(20)],
    ["seven in the morning", at(7)],
    ["nine tonight", at(21)],
    ["half past twelve am", at(0, 30)],
    ["four", at(4)],
  ])("[U14] at five in the afternoon, '%s' is minute %s", (text, minute) => {
    expect(parseClock(text, FIVE_PM)).toEqual({ ok: true, value: minute });
  });

  it.each(["six five", "25:00", "6:75", "half to six", "twenty five", "o'clock", "soon", ""])(
    "[U14] '%s' is refused with a sentence",
    (text) => {
      expect(parseClock(text, FIVE_PM)).toEqual({
        ok: false,
        error: `"${text}" is not a time of day; say it like half past six or 6:30 pm.`,
      });
    },
  );

  it("[U14] in a sentence the time stops where it stops", () => {
    const words = spokenWords("we eat at quarter to eight tonight if we can");
    expect(parseSpokenClock(words, 3, FIVE_PM)).toEqual({ value: at(19, 45), next: 7 });
    expect(parseSpokenClock(words, 0, FIVE_PM)).toBeNull();
  });

  it("[U14] a time is said in one natural form", () => {
    expect([0, 365, 720, 1110, 1114, 1140, 1500].map(spokenClock)).toEqual([
      "midnight",
      "six oh five",
      "noon",
      "six thirty",
      "six thirty-four",
      "seven o'clock",
      "one o'clock",
    ]);
    expect([formatClock(0), formatClock(725), formatClock(1114)]).toEqual([
      "12:00 am",
      "12:05 pm",
      "6:34 pm",
    ]);
  });
});
