import { numberWords } from "../units/number-words.ts";
import type { Instant } from "../units/quantity.ts";

/** A moment, and how far the kitchen's clock is ahead of UTC at any. */
export interface Wall {
  readonly now: Instant;
  /** Minutes. */
  readonly utcOffsetMinutes: (at: Instant) => number;
}

const dayMs = 86_400_000;
const weekdays = ["Thursday", "Friday", "Saturday", "Sunday", "Monday", "Tuesday", "Wednesday"] as const;

/** Which day by the kitchen's calendar, counted from 1970-01-01, which was a Thursday. */
const dayOf = (at: Instant, { utcOffsetMinutes }: Wall): number =>
  Math.floor((at + utcOffsetMinutes(at) * 60_000) / dayMs);

/** How many days by the calendar a moment lies before now; below 0: after it. */
export const daysAgo = (at: Instant, wall: Wall): number => dayOf(wall.now, wall) - dayOf(at, wall);

/** "Friday". */
export const weekdayOf = (at: Instant, wall: Wall): string => weekdays[dayOf(at, wall) % 7] ?? "";

/** Until when as it is said: "today", "by tomorrow", "by Friday", "within ninety days"; "no more" where it is past. */
export function byDay(useBy: Instant, wall: Wall): string {
  const away = -daysAgo(useBy, wall);
  if (useBy < wall.now) return "no more";
  if (away === 0) return "today";
  if (away === 1) return "by tomorrow";
  return away < 7 ? `by ${weekdayOf(useBy, wall)}` : `within ${numberWords(away)} days`;
}
