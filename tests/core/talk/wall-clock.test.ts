import { describe, expect, it } from "vitest";
import { clockAt } from "../../../core/talk/speech.ts";
import { nextAt } from "../../../core/talk/answers/evening.ts";
import { hours, instant, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";

const utc = (hour: number, minute = 0): Instant => instant(Date.UTC(2031, 2, 30, hour, minute));

/** A place an hour ahead of UTC whose clocks are changed at one o'clock UTC: at two by its own clock, or at three back. */
const changedAt = (change: Instant, before: number, after: number) => (at: Instant) =>
  at < change ? before : after;
const ahead = changedAt(utc(1), 60, 120);
const back = changedAt(utc(1), 120, 60);
/** Made up: the clocks are set ahead at six in the evening. */
const atDinner = changedAt(utc(17), 60, 120);

describe("the night of the time change", () => {
  it.each([
    ["set ahead", ahead, utc(10)],
    ["set back", back, utc(11)],
  ])("[N85] who says noon means what the wall shows then: %s", (_way, utcOffsetMinutes, noon) => {
    const at = nextAt(720, { now: utc(-1), utcOffsetMinutes });
    expect(at).toBe(noon);
    expect(clockAt(at, { utcOffsetMinutes })).toBe("noon");
  });

  it("[N85] an evening in which the clocks change keeps the time that was said", () => {
    const at = nextAt(1140, { now: utc(16), utcOffsetMinutes: atDinner });
    expect(at).toBe(utc(17));
    expect(clockAt(at, { utcOffsetMinutes: atDinner })).toBe("seven o'clock");
    expect(nextAt(1140, { now: utc(16), utcOffsetMinutes: () => 60 })).toBe(utc(18));
  });

  it("[N85] a minute that is skipped comes when it would have; of one that comes twice the first to come is meant", () => {
    const skipped = nextAt(150, { now: utc(0), utcOffsetMinutes: ahead });
    expect([skipped, clockAt(skipped, { utcOffsetMinutes: ahead })]).toEqual([utc(1, 30), "three thirty"]);
    expect(nextAt(150, { now: utc(0), utcOffsetMinutes: back })).toBe(utc(0, 30));
    expect(nextAt(150, { now: utc(0, 45), utcOffsetMinutes: back })).toBe(utc(1, 30));
  });

  it("[N85] away from it the next such minute is at most a day off", () => {
    for (let minute = 0; minute < 1440; minute += 7) {
      const at = nextAt(minute, { now: utc(12, 30), utcOffsetMinutes: ahead });
      expect(at).toBeGreaterThanOrEqual(utc(12, 30));
      expect(at).toBeLessThan(plus(utc(12, 30), hours(24)));
      expect((at / 60_000 + 120 - minute) % 1440).toBe(0);
    }
    expect(nextAt(750 + 120, { now: plus(utc(12, 30), minutes(0)), utcOffsetMinutes: ahead })).toBe(
      utc(12, 30),
    );
  });
});
