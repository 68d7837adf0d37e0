import type { Timer } from "../../../core/cook/session.ts";
import { nextRingAt, ringOf } from "../../../core/cook/timer.ts";
import { between, seconds } from "../../../core/units/quantity.ts";
import type { Instant, Seconds } from "../../../core/units/quantity.ts";

/** What a tile shows of a timer. */
export interface TimerFigures {
  readonly state: "ringing" | "running" | "paused" | "over";
  /** "12:34"; from an hour on "1:02" with the seconds apart, and "+0:40" once the time is up. */
  readonly digits: string;
  /** ":33" where the digits are hours and minutes, else empty. */
  readonly seconds: string;
  /** "look 6:12 pm, up 6:20 pm". */
  readonly line: string;
  /** How much of the way to the late end is behind it, 0 to 1. */
  readonly part: number;
  /** Where on that way the early end lies, 0 to 1; null where both ends are one. */
  readonly lookPart: number | null;
}

/** The open timers: ringing first, then the next to ring; paused ones last. */
export function railOrder(timers: Iterable<Timer>, now: Instant): readonly Timer[] {
  const rank = (timer: Timer): number => {
    const ring = ringOf(timer, now);
    if (ring !== null) return ring.since - now - 1e12;
    return nextRingAt(timer, now) ?? (timer.run.state === "running" ? now : Infinity);
  };
  return [...timers].filter((timer) => timer.run.state !== "stopped").toSorted((a, b) => rank(a) - rank(b));
}

/** What to show of a timer that is not stopped. @param clockOf a moment as the kitchen's clock shows it */
export function timerFigures(timer: Timer, now: Instant, clockOf: (at: Instant) => string): TimerFigures {
  const { run } = timer;
  if (run.state === "stopped")
    return { state: "over", ...split(seconds(0)), line: "stopped", part: 1, lookPart: null };
  if (run.state === "paused") {
    const whole = run.ran + run.left;
    const next = run.lookLeft > 0 ? run.lookLeft : run.left;
    return { state: "paused", ...split(next), line: "paused", part: share(run.ran, whole), lookPart: null };
  }
  const whole = between(run.startedAt, run.endsAt);
  const isRange = run.endsAt - run.lookAt >= 1000;
  const figures = {
    part: share(between(run.startedAt, now), whole),
    lookPart: isRange ? share(between(run.startedAt, run.lookAt), whole) : null,
  };
  const ring = ringOf(timer, now);
  if (ring !== null) {
    const line = ring.ring === "look" ? `time for a look, up ${clockOf(run.endsAt)}` : "time is up";
    return { ...figures, state: "ringing", ...split(between(now, ring.since)), line };
  }
  const next = nextRingAt(timer, now);
  if (next === null)
    return {
      ...figures,
      state: "over",
      ...split(between(now, run.endsAt)),
      line: `was up ${clockOf(run.endsAt)}`,
    };
  const isLookAhead = isRange && next === run.lookAt;
  const line = isLookAhead
    ? `look ${clockOf(run.lookAt)}, up ${clockOf(run.endsAt)}`
    : `up ${clockOf(run.endsAt)}`;
  return { ...figures, state: "running", ...split(between(now, next)), line };
}

const share = (part: number, whole: number): number =>
  whole <= 0 ? 1 : Math.min(1, Math.max(0, part / whole));

const two = (n: number): string => String(n).padStart(2, "0");

/** A length in digits; what is over is counted up with a plus. A second that has begun still counts. */
function split(length: Seconds): { readonly digits: string; readonly seconds: string } {
  const whole = length >= 0 ? Math.ceil(length) : Math.floor(Math.abs(length));
  const sign = length < 0 ? "+" : "";
  const [hour, minute, second] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  if (hour === 0) return { digits: `${sign}${minute}:${two(second)}`, seconds: "" };
  return { digits: `${sign}${hour}:${two(minute)}`, seconds: `:${two(second)}` };
}
