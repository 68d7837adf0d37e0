import { instant, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";

/** How far one touch moves the serving time. */
export const servingStep = minutes(15);

/** Nobody who lights the stove wants to wait longer than this for the first step. */
const longestWait = minutes(60);

/**
 * The next time that a meal's own serving time comes round; null where it has none, where it is so soon that
 * the meal cannot be ready for it any more, or so late that there would be nothing to do for an hour.
 * @param serveAt minutes from midnight on the kitchen's clock
 */
export function ownServing(
  serveAt: number | null,
  takesMinutes: number,
  now: Instant,
  utcOffsetMinutes: (at: Instant) => number,
): Instant | null {
  if (serveAt === null) return null;
  const dayMs = 86_400_000;
  const today = Math.floor((now + utcOffsetMinutes(now) * 60_000) / dayMs) * dayMs + serveAt * 60_000;
  // By the offset of then, where the clocks are changed before dinner.
  const about = instant(today - utcOffsetMinutes(now) * 60_000);
  const at = instant(today - utcOffsetMinutes(about) * 60_000);
  const soonest = plus(now, minutes(takesMinutes));
  return at < soonest || at > plus(soonest, longestWait) ? null : at;
}

/** The earliest quarter of an hour at which a meal begun now can be on the table. */
export function earliestServing(takesMinutes: number, now: Instant): Instant {
  const quarterMs = servingStep * 1000;
  return instant(Math.ceil((now + takesMinutes * 60_000) / quarterMs) * quarterMs);
}

/** One touch earlier or later; earlier than the earliest means as soon as it is ready (null). */
export function movedServing(
  serveAt: Instant | null,
  by: 1 | -1,
  takesMinutes: number,
  now: Instant,
): Instant | null {
  const earliest = earliestServing(takesMinutes, now);
  if (serveAt === null) return by > 0 ? earliest : null;
  const moved = instant(serveAt + by * servingStep * 1000);
  return moved < earliest ? null : moved;
}
