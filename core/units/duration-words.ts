import type { Span } from "./duration.ts";
import { numberWords } from "./number-words.ts";
import type { Seconds } from "./quantity.ts";
import { seconds } from "./quantity.ts";

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;

function counted(count: number, one: string): string {
  return `${numberWords(count)} ${one}${count === 1 ? "" : "s"}`;
}

function joined(parts: readonly string[]): string {
  const last = parts[parts.length - 1] ?? "";
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(", ")} and ${last}`;
}

/** The lengths that have a name of their own; said in parts they sound like a railway timetable. */
function named(total: number): string | null {
  if (total === 30 * MINUTE) return "half an hour";
  if (total === HOUR) return "an hour";
  const isHalfPast = total > HOUR && total < DAY && total % HOUR === 30 * MINUTE;
  if (isHalfPast) {
    const hours = Math.floor(total / HOUR);
    return hours === 1 ? "an hour and a half" : `${numberWords(hours)} and a half hours`;
  }
  if (total > MINUTE && total < 10 * MINUTE && total % MINUTE === 30) {
    const minutes = Math.floor(total / MINUTE);
    return minutes === 1 ? "a minute and a half" : `${numberWords(minutes)} and a half minutes`;
  }
  return null;
}

/**
 * A length of time as a cook says it, exact to the second: "twelve minutes", "half an hour",
 * "one hour and twenty minutes", "an hour and a half". A negative length is said without its sign.
 */
export function spokenDuration(length: Seconds): string {
  const total = Math.round(Math.abs(length));
  const known = named(total);
  if (known !== null) return known;
  if (total === 0) return "no time";
  const parts: string[] = [];
  const days = Math.floor(total / DAY);
  const hours = Math.floor((total % DAY) / HOUR);
  const minutes = Math.floor((total % HOUR) / MINUTE);
  if (days > 0) parts.push(counted(days, "day"));
  if (hours > 0) parts.push(counted(hours, "hour"));
  if (minutes > 0) parts.push(counted(minutes, "minute"));
  if (total % MINUTE > 0) parts.push(counted(total % MINUTE, "second"));
  return joined(parts);
}

/** One figure and one unit when the length is a whole number of that unit; else null. */
function inOneUnit(total: number, unit: number): number | null {
  const count = total / unit;
  return Number.isInteger(count) && count > 0 ? count : null;
}

/** A range of time as a cook says it: "ten to fifteen minutes", "forty-five minutes to an hour". */
export function spokenSpan(length: Span): string {
  if (length.low === length.high) return spokenDuration(length.high);
  const units = [[DAY, "days"], [HOUR, "hours"], [MINUTE, "minutes"], [1, "seconds"]] as const;
  for (const [unit, name] of units) {
    const [low, high] = [inOneUnit(length.low, unit), inOneUnit(length.high, unit)];
    const isSmall = high !== null && (unit === DAY || high < 60);
    if (low !== null && isSmall) return `${numberWords(low)} to ${numberWords(high)} ${name}`;
  }
  return `${spokenDuration(length.low)} to ${spokenDuration(length.high)}`;
}

/** How finely a remaining time is worth saying: seconds in the last minute, halves of a minute up to five. */
function grain(total: number): number {
  if (total < MINUTE) return 5;
  if (total < 5 * MINUTE) return 30;
  return total < 2 * HOUR ? MINUTE : 5 * MINUTE;
}

/**
 * What is left of a timer, rounded to what an ear can use: "about twelve minutes", "twelve minutes", "twenty seconds".
 * Says "about" only when more than two seconds were rounded away; below three seconds it says "no time".
 */
export function spokenRoughly(length: Seconds): string {
  const total = Math.abs(length);
  const step = grain(total);
  const rounded = Math.round(total / step) * step;
  const said = spokenDuration(seconds(rounded));
  return Math.abs(rounded - total) > 2 && rounded > 0 ? `about ${said}` : said;
}
