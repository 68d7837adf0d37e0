import { minus } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { utcDateTime } from "../units/utc-date.ts";
import { bigMoments } from "./big-moments.ts";
import type { BigMoment, PlannedEvening } from "./big-moments.ts";
import { contentLine, textValue } from "./content-line.ts";

/** Who wrote a calendar file: its PRODID. Source: RFC 5545, section 3.7.3. */
export const calendarMaker = "-//Stovecall//Run sheet//EN";

/** What a calendar file needs besides the evening. */
export interface CalendarMark {
  /** When it is written. */
  readonly stamp: Instant;
  /** What sets this evening apart from every other one: "2026-03-01.stovecall". The same base keeps every UID. */
  readonly uidBase: string;
}

const text = (name: string, value: string): string => contentLine(name, textValue(value));

/** "-PT10M", "PT0S": so long before the start. Source: RFC 5545, sections 3.3.6 and 3.8.6.3. */
const before = (length: Seconds): string => (length === 0 ? "PT0S" : `-PT${Math.round(length / 60)}M`);

/** Source: RFC 5545, section 3.6.6. A reminder for a time gone by would ring the moment the file is read: none then. */
function alarm({ from, remind, title }: BigMoment, stamp: Instant): readonly string[] {
  if (minus(from, remind) < stamp) return [];
  return [
    contentLine("BEGIN", "VALARM"),
    contentLine("ACTION", "DISPLAY"),
    text("DESCRIPTION", title),
    contentLine("TRIGGER", before(remind)),
    contentLine("END", "VALARM"),
  ];
}

/** Source: RFC 5545, section 3.6.1. */
function event(moment: BigMoment, meal: string, { stamp, uidBase }: CalendarMark): string {
  const { key, from, to, title, about, isBusy } = moment;
  return [
    contentLine("BEGIN", "VEVENT"),
    text("UID", `${meal}.${key.replace(/\s+/g, "-")}@${uidBase}`),
    contentLine("DTSTAMP", utcDateTime(stamp)),
    contentLine("DTSTART", utcDateTime(from)),
    contentLine("DTEND", utcDateTime(to)),
    text("SUMMARY", title),
    ...(about.length === 0 ? [] : [text("DESCRIPTION", about.join("\n"))]),
    contentLine("TRANSP", isBusy ? "OPAQUE" : "TRANSPARENT"),
    ...alarm(moment, stamp),
    contentLine("END", "VEVENT"),
  ].join("");
}

/**
 * The evening's big moments as a calendar file (iCalendar): the whole of the cooking, the turns of the oven, long
 * unattended steps, the first hands-on step of each dish, serving, and storing what is left. What is over at the
 * stamp is left out. All times are UTC, so that no time zone has to be explained; there is no METHOD, for nobody is
 * invited to anything.
 * Source: RFC 5545.
 */
export function calendarOf(evening: PlannedEvening, mark: CalendarMark): string {
  const moments = bigMoments(evening).filter(({ key, to }) => to > mark.stamp || key === "store");
  return [
    contentLine("BEGIN", "VCALENDAR"),
    contentLine("VERSION", "2.0"),
    text("PRODID", calendarMaker),
    contentLine("CALSCALE", "GREGORIAN"),
    ...moments.map((moment) => event(moment, evening.meal.id, mark)),
    contentLine("END", "VCALENDAR"),
  ].join("");
}
