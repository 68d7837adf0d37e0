import type { Wall } from "../../core/house/day-words.ts";
import type { Instant } from "../../core/units/quantity.ts";

/** The calendar of this machine at a moment. */
export const wallAt = (now: Instant): Wall => ({
  now,
  utcOffsetMinutes: (at) => -new Date(at).getTimezoneOffset(),
});

/** A day by this machine's calendar: "Fri, Jan 4". */
export const dayFigure = (at: Instant): string =>
  new Date(at).toLocaleDateString("en-US", { weekday: "short", month: "short", day: "numeric" });

/** A moment by its clock and calendar: "6:04 pm on Fri, Jan 4". */
export function momentFigure(at: Instant): string {
  const time = new Date(at).toLocaleTimeString("en-US", { hour: "numeric", minute: "2-digit" });
  return `${time.replace(/\s*([AP])M$/, (_, half: string) => ` ${half.toLowerCase()}m`)} on ${dayFigure(at)}`;
}
