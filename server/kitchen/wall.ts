import type { Wall } from "../../core/house/day-words.ts";
import type { Calendar } from "../../core/shop/from-fridge.ts";
import { instant, type Instant } from "../../core/units/quantity.ts";

/** The calendar of this machine, now. */
export const calendarNow = (): Calendar => ({
  now: instant(Date.now()),
  sayDay: (at) =>
    new Date(at).toLocaleDateString("en-US", { weekday: "long", month: "short", day: "numeric" }),
});

/** The clock of this machine, now. */
export const wallNow = (): Wall => ({
  now: instant(Date.now()),
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
