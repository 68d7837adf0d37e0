import { numberWords, parseSpokenNumber } from "./number-words.ts";
import type { Seconds } from "./quantity.ts";
import { seconds } from "./quantity.ts";
import type { Rational } from "./rational.ts";
import { ONE, add, compare, mul, ratio, toNumber } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";
import type { SpokenValue } from "./spoken-words.ts";
import { spokenWords } from "./spoken-words.ts";

/** A range of time, `low <= high`; both equal when one figure was named. */
export type Span = { readonly low: Seconds; readonly high: Seconds };

/** A range of time from its ends; leave out `high` for an exact one. Throws when the ends are out of order. */
export function span(low: Seconds, high: Seconds = low): Span {
  if (low > high) throw new Error(`time runs backwards: ${String(low)} s to ${String(high)} s`);
  return { low, high };
}

const SECOND = 1;
const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;
const WEEK = 604_800;

const UNIT_SECONDS: ReadonlyMap<string, number> = new Map([
  ...["s", "sec", "secs", "second", "seconds"].map((word): [string, number] => [word, SECOND]),
  ...["m", "min", "mins", "minute", "minutes"].map((word): [string, number] => [word, MINUTE]),
  ...["h", "hr", "hrs", "hour", "hours"].map((word): [string, number] => [word, HOUR]),
  ...["d", "day", "days"].map((word): [string, number] => [word, DAY]),
  ...["w", "wk", "wks", "week", "weeks"].map((word): [string, number] => [word, WEEK]),
]);

/** One "number unit" pair, exact; `unit` is the unit's length in seconds. */
type Term = { readonly total: Rational; readonly unit: number; readonly next: number };

/** "more" and the like may stand between number and unit: "two more minutes". */
function overMore(words: readonly string[], at: number): number {
  return /^(?:more|extra|full|whole|further)$/.test(words[at] ?? "") ? at + 1 : at;
}

function unitAt(words: readonly string[], at: number): number | null {
  return UNIT_SECONDS.get(words[at] ?? "") ?? null;
}

/** A count that may stand before a unit: any number, or "a", "an", "another" for one. */
function countAt(words: readonly string[], at: number): SpokenValue<Rational> | null {
  const number = parseSpokenNumber(words, at);
  if (number !== null) return number;
  return /^(?:an?|another)$/.test(words[at] ?? "") ? { value: ONE, next: at + 1 } : null;
}

function readTerm(words: readonly string[], from: number): Term | null {
  const start = words[from] === "another" && parseSpokenNumber(words, from + 1) !== null ? from + 1 : from;
  const count = countAt(words, start);
  if (count === null) return null;
  const at = overMore(words, count.next);
  const unit = unitAt(words, at);
  if (unit === null) return null;
  const total = mul(count.value, ratio(unit));
  const extra = words[at + 1] === "and" ? parseSpokenNumber(words, at + 2) : null;
  const isPartOfUnit = extra !== null && compare(extra.value, ONE) < 0 && unitAt(words, extra.next) === null;
  if (!isPartOfUnit) return { total, unit, next: at + 1 };
  return { total: add(total, mul(extra.value, ratio(unit))), unit, next: extra.next };
}

/** Behind a bare figure these go on with the sentence; a noun would make the figure its own ("twenty onions"). */
const GOES_ON = /^(?:for|on|in|at|to|or|of|from|until|till|please|now|left|timers?)$/;

/** "one hour twenty": a bare figure behind hours is minutes, behind minutes seconds. */
function readBareTail(words: readonly string[], term: Term): Term | null {
  if (term.unit !== HOUR && term.unit !== MINUTE) return null;
  const number = parseSpokenNumber(words, words[term.next] === "and" ? term.next + 1 : term.next);
  if (number === null) return null;
  const follower = words[number.next];
  if (follower !== undefined && !GOES_ON.test(follower)) return null;
  const isWhole = number.value.endsWith("/1") && compare(number.value, ratio(60)) < 0;
  const unit = term.unit / 60;
  return isWhole ? { total: mul(number.value, ratio(unit)), unit, next: number.next } : null;
}

/** "an hour and twenty minutes", "1 h 20 min", "two days": terms of ever smaller units. */
function readLength(words: readonly string[], from: number): Term | null {
  const first = readTerm(words, from);
  if (first === null) return null;
  let last: Term = first;
  let { total } = first;
  for (;;) {
    const at = words[last.next] === "and" ? last.next + 1 : last.next;
    const paired = readTerm(words, at);
    const smaller: Term | null = paired !== null && paired.unit < last.unit ? paired : null;
    const tail: Term | null = smaller ?? (paired === null ? readBareTail(words, last) : null);
    if (tail === null) return { ...last, total };
    total = add(total, tail.total);
    last = tail;
  }
}

const toSeconds = (exact: Rational): Seconds => seconds(toNumber(exact));

/** "ten to fifteen minutes", "five or six minutes": the unit stands once, behind the second figure. */
function readSharedUnit(words: readonly string[], from: number): SpokenValue<Span> | null {
  const start = words[from] === "another" ? from + 1 : from;
  const first = parseSpokenNumber(words, words[start] === "between" ? start + 1 : start);
  if (first === null) return null;
  const joins = words[start] === "between" ? /^and$/ : /^(?:to|or)$/;
  if (!joins.test(words[first.next] ?? "")) return null;
  const second = readLength(words, first.next + 1);
  if (second === null) return null;
  const low = mul(first.value, ratio(second.unit));
  if (compare(low, second.total) > 0) return null;
  return { value: span(toSeconds(low), toSeconds(second.total)), next: second.next };
}

/** What may follow a whole length: "(forty five minutes) to an hour", "(a minute) or two". */
function readUpperEnd(words: readonly string[], first: Term): SpokenValue<Span> | null {
  const join = words[first.next];
  if (join !== "to" && join !== "or") return null;
  const length = readLength(words, first.next + 1);
  const bare = length === null && join === "or" ? parseSpokenNumber(words, first.next + 1) : null;
  const high = length?.total ?? (bare === null ? null : mul(bare.value, ratio(first.unit)));
  const next = length?.next ?? bare?.next;
  if (high === null || next === undefined || compare(first.total, high) >= 0) return null;
  return { value: span(toSeconds(first.total), toSeconds(high)), next };
}

/**
 * A length of time within a sentence, from word `from` on (words as `spokenWords` makes them).
 * Reads "twelve minutes", "an hour and a half", "ninety seconds", "one hour twenty", "half an hour",
 * "a quarter of an hour", "two more minutes", and ranges: "ten to fifteen minutes", "a minute or two".
 * Null where no length stands. Vague lengths ("a few minutes") are none: nobody can time them.
 */
export function parseSpokenDuration(words: readonly string[], from: number): SpokenValue<Span> | null {
  const shared = readSharedUnit(words, from);
  if (shared !== null) return shared;
  const first = readLength(words, from);
  if (first === null) return null;
  return readUpperEnd(words, first) ?? { value: span(toSeconds(first.total)), next: first.next };
}

/**
 * Reads a whole text as a length of time: "10-15 min", "1 h 20 min", "90 s", "1 1/2 hours", "45 min - 1 h".
 * Errors: one sentence saying how to write it.
 */
export function parseDuration(text: string): Result<Span, string> {
  const words = spokenWords(text.replace(/(?<=[a-z]\s*)[-–—](?=\s*\d)/gi, " to "));
  const read = parseSpokenDuration(words, 0);
  if (read?.next !== words.length) {
    return err(`"${text}" is not a length of time; write it like 12 min, 1 h 20 min or 10-15 min.`);
  }
  return ok(read.value);
}

const SHORT: readonly (readonly [number, string])[] = [
  [DAY, "d"],
  [HOUR, "h"],
  [MINUTE, "min"],
  [SECOND, "s"],
];

function formatLength(length: Seconds): string {
  let left = Math.round(length);
  if (left === 0) return "0 s";
  const parts: string[] = [];
  for (const [size, name] of SHORT) {
    const count = Math.floor(left / size);
    if (count > 0) parts.push(`${String(count)} ${name}`);
    left -= count * size;
  }
  return parts.join(" ");
}

/** The short written form, to the second: "12 min", "1 h 20 min", "10-15 min", "45 min - 1 h". */
export function formatDuration(length: Span): string {
  const [low, high] = [formatLength(length.low), formatLength(length.high)];
  if (low === high) return high;
  const [lowFigure, lowUnit, ...lowRest] = low.split(" ");
  const [, highUnit, ...highRest] = high.split(" ");
  const isShared = lowUnit === highUnit && lowRest.length === 0 && highRest.length === 0;
  return isShared ? `${lowFigure ?? ""}-${high}` : `${low} - ${high}`;
}

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
  const units = [
    [DAY, "days"],
    [HOUR, "hours"],
    [MINUTE, "minutes"],
    [1, "seconds"],
  ] as const;
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
