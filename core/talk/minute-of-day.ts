import type { Kitchen } from "./model.ts";

/** Minutes from midnight on the kitchen's clock. */
export function minuteOfDay({ now, utcOffsetMinutes }: Pick<Kitchen, "now" | "utcOffsetMinutes">): number {
  const minute = Math.floor(now / 60_000) + utcOffsetMinutes(now);
  return ((minute % 1440) + 1440) % 1440;
}
