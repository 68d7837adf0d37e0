import type { Instant } from "./quantity.ts";

const dayMs = 86_400_000;
const two = (figure: number): string => String(figure).padStart(2, "0");

/**
 * Year, month and day of a count of days since 1970-01-01. The year is counted from March, so that the leap day is
 * its last and the months have a fixed pattern of lengths; 400 years always have 146,097 days.
 */
function civilDate(days: number): { readonly year: number; readonly month: number; readonly day: number } {
  // 719,468 days lie between 0000-03-01 and 1970-01-01.
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const leapDays =
    Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leapDays) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
  };
}

/**
 * A moment as a UTC date with time, to the whole second before it: "20260301T170000Z".
 * Source: RFC 5545, section 3.3.5, form 2 (ISO 8601 basic format).
 */
export function utcDateTime(at: Instant): string {
  const { year, month, day } = civilDate(Math.floor(at / dayMs));
  const second = Math.floor((((at % dayMs) + dayMs) % dayMs) / 1000);
  const time = [Math.floor(second / 3600), Math.floor(second / 60) % 60, second % 60].map(two).join("");
  return `${String(year).padStart(4, "0")}${two(month)}${two(day)}T${time}Z`;
}
