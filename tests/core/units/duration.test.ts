import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  formatDuration,
  parseDuration,
  parseSpokenDuration,
  span,
  spokenDuration,
  spokenRoughly,
  spokenSpan,
} from "../../../core/units/duration.ts";
import { formatIsoDuration, parseIsoDuration } from "../../../core/units/iso-duration.ts";
import { seconds } from "../../../core/units/quantity.ts";
import { spokenWords } from "../../../core/units/spoken-words.ts";

const anySpan = fc
  .tuple(fc.nat(400_000), fc.nat(400_000))
  .map(([a, b]) => span(seconds(Math.min(a, b)), seconds(Math.max(a, b))));
const wholeMinutes = fc
  .tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }))
  .map(([a, b]) => span(seconds(Math.min(a, b) * 60), seconds(Math.max(a, b) * 60)));

const read = (text: string): unknown => {
  const result = parseDuration(text);
  return result.ok ? [result.value.low, result.value.high] : result.error;
};

describe("lengths of time", () => {
  it("[U10] a length as written reads back to the same range", () => {
    fc.assert(
      fc.property(fc.oneof(anySpan, wholeMinutes), (length) => {
        expect(parseDuration(formatDuration(length))).toEqual({ ok: true, value: length });
      }),
    );
  });

  it("[U12] a length as said is understood as itself", () => {
    fc.assert(
      fc.property(fc.oneof(anySpan, wholeMinutes), (length) => {
        fc.pre(length.low > 0);
        const said = spokenSpan(length);
        expect([said, parseDuration(said)]).toEqual([said, { ok: true, value: length }]);
      }),
      { numRuns: 1000 },
    );
  });

  it.each<[string, number, number]>([
    ["10-15 min", 600, 900],
    ["1 h 20 min", 4800, 4800],
    ["1h20m", 4800, 4800],
    ["90 s", 90, 90],
    ["1 1/2 hours", 5400, 5400],
    ["1-1/2 hours", 5400, 5400],
    ["1.5 h", 5400, 5400],
    ["2 days", 172_800, 172_800],
    ["45 min - 1 h", 2700, 3600],
    ["an hour and twenty minutes", 4800, 4800],
    ["ten to fifteen minutes", 600, 900],
    ["between five and ten minutes", 300, 600],
    ["half an hour", 1800, 1800],
    ["a half hour", 1800, 1800],
    ["a quarter of an hour", 900, 900],
    ["three quarters of an hour", 2700, 2700],
    ["an hour and a half", 5400, 5400],
    ["two and a half minutes", 150, 150],
    ["ninety seconds", 90, 90],
    ["one hour twenty", 4800, 4800],
    ["one minute thirty", 90, 90],
    ["two more minutes", 120, 120],
    ["another ten minutes", 600, 600],
    ["another minute", 60, 60],
    ["a minute or two", 60, 120],
    ["two or three minutes", 120, 180],
    ["a couple of minutes", 120, 120],
    ["one five minutes", 900, 900],
    ["nine hundred hours", 3_240_000, 3_240_000],
  ])("[U10] %s lasts %s to %s s", (text, low, high) => {
    expect(read(text)).toEqual([low, high]);
  });

  it.each(["five", "soon", "a few minutes", "15-10 min", "", "ten minutes of rest", "minutes"])(
    "[U10] '%s' is refused with a sentence",
    (text) => {
      expect(read(text)).toBe(
        `"${text}" is not a length of time; write it like 12 min, 1 h 20 min or 10-15 min.`,
      );
    },
  );

  it.each<[string, number, number, number]>([
    ["twelve minutes for the flatbreads", 720, 720, 2],
    ["one hour twenty for the squash", 4800, 4800, 3],
    ["an hour twenty onions", 3600, 3600, 2],
    ["ten minutes and one egg", 600, 600, 2],
    ["ten minutes and then flip", 600, 600, 2],
    ["two minutes to the rice", 120, 120, 2],
    ["five to six minutes a side", 300, 360, 4],
    ["an hour or so", 3600, 3600, 2],
  ])("[U12] in '%s' the length stops where it stops", (text, low, high, next) => {
    expect(parseSpokenDuration(spokenWords(text), 0)).toEqual({ value: { low, high }, next });
  });

  it("[U12] a length is found in the middle of a sentence", () => {
    const words = spokenWords("set a timer for an hour and a half for the squash");
    expect(parseSpokenDuration(words, 4)).toEqual({ value: { low: 5400, high: 5400 }, next: 9 });
    expect(parseSpokenDuration(words, 1)).toBeNull();
  });

  it("[U12] lengths are said as a cook says them", () => {
    const said = [30, 60, 90, 150, 720, 1800, 3600, 4800, 5400, 9000, 172_800].map((s) =>
      spokenDuration(seconds(s)),
    );
    expect(said).toEqual([
      "thirty seconds",
      "one minute",
      "a minute and a half",
      "two and a half minutes",
      "twelve minutes",
      "half an hour",
      "an hour",
      "one hour and twenty minutes",
      "an hour and a half",
      "two and a half hours",
      "two days",
    ]);
    expect(spokenSpan(span(seconds(2700), seconds(3600)))).toBe("forty-five minutes to an hour");
  });

  it("[U13] what is left is said as finely as an ear can use", () => {
    const said = [1, 13, 58, 75, 299, 708, 720, 3599, 7300].map((s) => spokenRoughly(seconds(s)));
    expect(said).toEqual([
      "no time",
      "fifteen seconds",
      "one minute",
      "about a minute and a half",
      "five minutes",
      "about twelve minutes",
      "twelve minutes",
      "an hour",
      "about two hours",
    ]);
  });

  it("[U13] what is said of the time left is never off by more than half a minute below two hours", () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 7199 }), (left) => {
        const said = parseDuration(spokenRoughly(seconds(left)).replace("about ", ""));
        expect(said.ok && Math.abs(said.value.low - left)).toBeLessThanOrEqual(30);
      }),
    );
  });

  it("[U10] a range that runs backwards cannot be made", () => {
    expect(() => span(seconds(2), seconds(1))).toThrow("backwards");
  });
});

describe("ISO 8601 durations", () => {
  it("[U11] a length reads back to the same length, to the millisecond", () => {
    fc.assert(
      fc.property(fc.nat(4_000_000_000), (ms) => {
        const length = seconds(ms / 1000);
        expect(parseIsoDuration(formatIsoDuration(length))).toEqual({ ok: true, value: length });
      }),
    );
  });

  it.each<[string, number]>([
    // Forms of ISO 8601-1:2019, 5.5.2, and the grammar of RFC 3339, appendix A (both from memory).
    ["PT1H20M", 4800],
    ["PT36H", 129_600],
    ["P1DT12H", 129_600],
    ["P23DT23H", 2_070_000],
    ["P4W", 2_419_200],
    ["PT1,5H", 5400],
    ["PT0.5S", 0.5],
    ["PT1M", 60],
    ["P1D", 86_400],
    ["PT0S", 0],
  ])("[U11] %s lasts %s s", (text, length) => {
    expect(parseIsoDuration(text)).toEqual({ ok: true, value: length });
  });

  it.each(["P", "PT", "P1DT", "1H", "pt1h", "PT1H20", "-PT1H", "PT20M1H", "P1W2D", ""])(
    "[U11] '%s' is no duration and is refused with a sentence",
    (text) => {
      expect(parseIsoDuration(text)).toEqual({
        ok: false,
        error: `"${text}" is not an ISO 8601 duration; write it like PT1H20M.`,
      });
    },
  );

  it.each(["P3Y6M4DT12H30M5S", "P1M", "P1Y"])("[U11] %s has no fixed length and is refused", (text) => {
    expect(parseIsoDuration(text)).toEqual({
      ok: false,
      error: `"${text}" counts years or months, which have no fixed length; write days or hours.`,
    });
  });

  it("[U11] decimals stand in the smallest unit only", () => {
    expect(parseIsoDuration("PT1.5H2M")).toMatchObject({ ok: false });
    expect(parseIsoDuration("PT1..5H")).toMatchObject({ ok: false });
  });
});
