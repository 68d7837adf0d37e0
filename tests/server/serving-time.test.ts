import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { instant, type Instant } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import { servingMoment, wallClock } from "../../server/cli/serving-time.ts";

/**
 * Central European Time: on 30 March 2031 the clocks go from 2:00 to 3:00, on 26 October from 3:00 back to 2:00, both
 * at 1:00 UTC. Source: Directive 2000/84/EC, articles 2 and 3 (the last Sundays), from memory.
 */
beforeEach(() => void vi.stubEnv("TZ", "Europe/Berlin"));
afterEach(() => void vi.unstubAllEnvs());

const utc = (month: number, day: number, hour: number, minute = 0): Instant =>
  instant(Date.UTC(2031, month - 1, day, hour, minute));
const at = (minute: number, day: "today" | "tomorrow", now: Instant) => servingMoment({ minute, day }, now);

describe("a serving time on the night of the time change", () => {
  it("[P120] one that the clock skips is refused in one sentence", () => {
    const sentence = "02:30 is skipped that day: the clocks are set ahead. Name another time after --serve.";
    expect(at(150, "tomorrow", utc(3, 29, 19))).toEqual({ ok: false, error: sentence });
    expect(at(150, "today", utc(3, 29, 23, 30))).toEqual({ ok: false, error: sentence });
    expect(at(180, "tomorrow", utc(3, 29, 19))).toEqual(ok(utc(3, 30, 1)));
    expect(at(720, "tomorrow", utc(3, 29, 19))).toEqual(ok(utc(3, 30, 10)));
  });

  it("[P121] one that the clock shows twice is the next to come", () => {
    expect(at(150, "tomorrow", utc(10, 25, 19))).toEqual(ok(utc(10, 26, 0, 30)));
    expect(at(150, "today", utc(10, 26, 0, 45))).toEqual(ok(utc(10, 26, 1, 30)));
    expect(wallClock.time(utc(10, 26, 1, 30))).toBe("02:30");
    expect(at(150, "today", utc(10, 26, 1, 45)).ok).toBe(false);
    expect(at(720, "tomorrow", utc(10, 25, 19))).toEqual(ok(utc(10, 26, 11)));
  });
});
