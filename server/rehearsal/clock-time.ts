import { instant, type Instant } from "../../core/units/quantity.ts";

const dayMs = 86_400_000;

/** The moment of a rehearsal's day at a minute from midnight. Its clock has no time zone and starts at 0. */
export const atMinute = (minute: number): Instant => instant(minute * 60_000);

/** The next moment, from `after` on, at which the clock shows that minute. */
export function nextAtMinute(minute: number, after: Instant): Instant {
  const today = Math.floor(after / dayMs) * dayMs + minute * 60_000;
  return instant(today >= after ? today : today + dayMs);
}

/** "18:27". */
export const clockTime = (at: Instant): string => clockSecond(at).slice(0, 5);

/** "18:27:05". */
export function clockSecond(at: Instant): string {
  const second = Math.floor((at % dayMs) / 1000);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${two(Math.floor(second / 3600))}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;
}
