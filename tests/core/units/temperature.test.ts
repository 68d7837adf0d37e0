import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ratio } from "../../../core/units/rational.ts";
import {
  celsiusFrom,
  compareHeat,
  fahrenheitFrom,
  formatHeat,
  inScale,
  parseHeat,
  parseSpokenHeat,
  spokenHeat,
  spokenHeatInFull,
  toCelsius,
  toFahrenheit,
} from "../../../core/units/temperature.ts";
import { spokenWords } from "../../../core/units/spoken-words.ts";
import { anyRational } from "./arbitraries.ts";

describe("heat", () => {
  it("[U9] Fahrenheit and Celsius convert there and back exactly", () => {
    fc.assert(fc.property(anyRational, (degrees) => fahrenheitFrom(celsiusFrom(degrees)) === degrees));
    fc.assert(fc.property(anyRational, (degrees) => celsiusFrom(fahrenheitFrom(degrees)) === degrees));
  });

  it("[U9] the fixed points meet", () => {
    // Ice point and boiling point by the definition of the two scales (NIST SP 811, appendix B); -40 is where they cross.
    const points = [
      [32, 0],
      [212, 100],
      [-40, -40],
    ] as const;
    for (const [f, c] of points) {
      expect(toCelsius({ degrees: f, scale: "F" })).toBe(c);
      expect(toFahrenheit({ degrees: c, scale: "C" })).toBe(f);
    }
  });

  it.each([
    // Temperatures of the FDA Food Code and common oven settings; Celsius computed with GNU units 2.22.
    [41, 5],
    [70, 21.1111],
    [135, 57.2222],
    [165, 73.8889],
    [350, 176.6667],
    [425, 218.3333],
  ])("[U9] %s F is %s C", (f, c) => {
    expect(toCelsius({ degrees: f, scale: "F" })).toBeCloseTo(c, 4);
  });

  it("[U9] a heat keeps the scale it was written in, and compares across scales", () => {
    expect(parseHeat("365 F")).toEqual({ ok: true, value: { degrees: 365, scale: "F" } });
    expect(parseHeat("180°C")).toEqual({ ok: true, value: { degrees: 180, scale: "C" } });
    expect(inScale({ degrees: 100, scale: "C" }, "F")).toEqual({ degrees: 212, scale: "F" });
    expect(compareHeat({ degrees: 180, scale: "C" }, { degrees: 350, scale: "F" })).toBeGreaterThan(0);
    expect(compareHeat({ degrees: 100, scale: "C" }, { degrees: 212, scale: "F" })).toBe(0);
  });

  it("[U15] every oven setting, said aloud, is understood as itself", () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 600 }), fc.constantFrom("F", "C"), (degrees, scale) => {
        const heat = { degrees, scale } as const;
        expect(parseHeat(spokenHeatInFull(heat), scale === "F" ? "C" : "F")).toEqual({
          ok: true,
          value: heat,
        });
        expect(parseHeat(formatHeat(heat), "F")).toEqual({ ok: true, value: heat });
      }),
    );
  });

  it("[U15] an oven dial is read out in two parts", () => {
    for (const text of [
      "three sixty five",
      "three hundred and sixty-five degrees",
      "365",
      "three sixty-five fahrenheit",
    ]) {
      expect([text, parseHeat(text)]).toEqual([text, { ok: true, value: { degrees: 365, scale: "F" } }]);
    }
    const words = spokenWords("set the oven to four twenty five please");
    expect(parseSpokenHeat(words, 4)).toEqual({ value: { degrees: 425, scale: "F" }, next: 7 });
    expect(spokenHeat({ degrees: 365, scale: "F" })).toBe("three hundred sixty-five degrees");
  });

  it("[U9] what is no temperature is refused with a sentence", () => {
    expect(parseHeat("hot")).toEqual({
      ok: false,
      error: '"hot" is not a temperature; write it like 365 F or 180 C.',
    });
    expect(parseHeat("-300 C")).toEqual({
      ok: false,
      error: '"-300 C" is colder than anything can be; check the figure.',
    });
    expect(fahrenheitFrom(ratio(100))).toBe("212/1");
  });
});
