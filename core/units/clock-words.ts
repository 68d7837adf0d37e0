import { numberWords, parseSpokenNumber } from "./number-words.ts";
import { toNumber } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";
import type { SpokenValue } from "./spoken-words.ts";
import { spokenWords } from "./spoken-words.ts";

const NOON = 720;
const DAY = 1440;

/** A time of day as said: `isSettled` when it names its half of the day, or needs none. */
type ClockReading = { readonly minute: number; readonly isSettled: boolean; readonly next: number };

const wrap = (minute: number): number => ((minute % DAY) + DAY) % DAY;

/**
 * A time of day as said: "six thirty-four", "six oh five", "seven o'clock", "noon", "midnight".
 * @param minute whole minutes from midnight; days beyond the first wrap round
 */
export function spokenClock(minute: number): string {
  const time = wrap(Math.round(minute));
  if (time === 0) return "midnight";
  if (time === NOON) return "noon";
  const hour = numberWords(Math.floor(time / 60) % 12 || 12);
  const past = time % 60;
  if (past === 0) return `${hour} o'clock`;
  return past < 10 ? `${hour} oh ${numberWords(past)}` : `${hour} ${numberWords(past)}`;
}

/** A time of day as shown: "6:34 pm". */
export function formatClock(minute: number): string {
  const time = wrap(Math.round(minute));
  const hour = Math.floor(time / 60) % 12 || 12;
  return `${String(hour)}:${String(time % 60).padStart(2, "0")} ${time < NOON ? "am" : "pm"}`;
}

/** A whole number from 0 to `most` at a word, typed or spoken; null otherwise. */
function wholeAt(words: readonly string[], at: number, most: number): SpokenValue<number> | null {
  const read = parseSpokenNumber(words, at);
  if (read === null) return null;
  const value = toNumber(read.value);
  return Number.isInteger(value) && value >= 0 && value <= most ? { value, next: read.next } : null;
}

const HOURS = [
  "twelve",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
];

/** An hour alone: "six" is not to swallow the "oh five" behind it, as the number parser would. */
function hourAt(words: readonly string[], at: number): SpokenValue<number> | null {
  const word = words[at] ?? "";
  const named = HOURS.indexOf(word);
  if (named >= 0) return { value: named === 0 ? 12 : named, next: at + 1 };
  if (word === "zero") return { value: 0, next: at + 1 };
  if (/^\d{1,2}$/.test(word)) return Number(word) < 24 ? { value: Number(word), next: at + 1 } : null;
  // Below thirteen only the names above are hours: "one five" is fifteen figures, not an hour.
  const read = wholeAt(words, at, 2300);
  if (read === null) return null;
  const hour = read.value >= 100 && read.value % 100 === 0 ? read.value / 100 : read.value;
  return hour >= 13 && hour <= 23 ? { value: hour, next: read.next } : null;
}

const settled = (hour: number): boolean => hour > 12 || hour === 0;

/** "half past six", "quarter to seven", "ten minutes to seven", "twenty five past six". */
function readRelative(words: readonly string[], from: number): ClockReading | null {
  const start = words[from] === "a" ? from + 1 : from;
  const fixed = words[start] === "half" ? 30 : words[start] === "quarter" ? 15 : null;
  const count = fixed === null ? wholeAt(words, start, 59) : { value: fixed, next: start + 1 };
  if (count === null) return null;
  const at = /^min(?:ute)?s?$/.test(words[count.next] ?? "") ? count.next + 1 : count.next;
  const join = words[at] ?? "";
  const sign = /^(?:past|after)$/.test(join) ? 1 : /^(?:to|before|till|of)$/.test(join) ? -1 : 0;
  const named = namedAt(words, at + 1);
  const hour = named === null ? hourAt(words, at + 1) : null;
  if (sign === 0 || (fixed === 30 && sign < 0)) return null;
  if (named !== null)
    return { minute: wrap(named.minute + sign * count.value), isSettled: true, next: named.next };
  if (hour === null) return null;
  return {
    minute: wrap(hour.value * 60 + sign * count.value),
    isSettled: settled(hour.value),
    next: hour.next,
  };
}

function namedAt(words: readonly string[], at: number): ClockReading | null {
  const word = words[at] ?? "";
  if (word === "noon" || word === "midday") return { minute: NOON, isSettled: true, next: at + 1 };
  return word === "midnight" ? { minute: 0, isSettled: true, next: at + 1 } : null;
}

/** Minutes behind an hour: "thirty four", "oh five", "o'clock", or nothing. */
function pastAt(words: readonly string[], at: number): SpokenValue<number> {
  if (words[at] === "o'clock" || words[at] === "sharp") return { value: 0, next: at + 1 };
  if (words[at] === "o" && words[at + 1] === "clock") return { value: 0, next: at + 2 };
  if (words[at] === "hours") return { value: 0, next: at + 1 };
  const past = wholeAt(words, at, 59);
  const isTwoFigures = past !== null && (past.value >= 10 || past.next - at >= 2);
  return isTwoFigures ? past : { value: 0, next: at };
}

function readAbsolute(words: readonly string[], from: number): ClockReading | null {
  const typed = /^(\d{1,2})[:.](\d{2})$/.exec(words[from] ?? "");
  if (typed !== null) {
    const [hour, past] = [Number(typed[1]), Number(typed[2])];
    if (hour > 23 || past > 59) return null;
    return { minute: hour * 60 + past, isSettled: settled(hour), next: from + 1 };
  }
  const hour = hourAt(words, from);
  if (hour === null) return null;
  const past = pastAt(words, hour.next);
  return { minute: hour.value * 60 + past.value, isSettled: settled(hour.value), next: past.next };
}

/** "pm", "in the evening", "tonight": which half of the day, and where the sentence goes on. */
function halfAt(words: readonly string[], at: number): SpokenValue<"am" | "pm"> | null {
  const word = words[at] ?? "";
  const letters = /^[ap]$/.test(word) && words[at + 1] === "m" ? `${word}m` : word;
  const next = letters === word ? at + 1 : at + 2;
  if (letters === "am" || letters === "pm") return { value: letters, next };
  if (word === "tonight") return { value: "pm", next: at + 1 };
  const phrase = words.slice(at, at + 3).join(" ");
  if (phrase === "in the morning") return { value: "am", next: at + 3 };
  if (/^in the (?:afternoon|evening)$/.test(phrase)) return { value: "pm", next: at + 3 };
  return words.slice(at, at + 2).join(" ") === "at night" ? { value: "pm", next: at + 2 } : null;
}

/**
 * A time of day within a sentence, from word `from` on (words as `spokenWords` makes them).
 * Reads "half past six", "six thirty", "seven o'clock", "quarter to seven", "noon", "18:30", "7 pm".
 * Without a half of the day it is the first such time at or after the reference.
 * @param reference whole minutes from midnight, now
 * @returns whole minutes from midnight, 0 to 1439; null where no time stands
 */
export function parseSpokenClock(
  words: readonly string[],
  from: number,
  reference: number,
): SpokenValue<number> | null {
  const read = namedAt(words, from) ?? readRelative(words, from) ?? readAbsolute(words, from);
  if (read === null) return null;
  if (read.isSettled) return { value: read.minute, next: read.next };
  const half = halfAt(words, read.next);
  const early = read.minute % NOON;
  if (half !== null) return { value: half.value === "am" ? early : early + NOON, next: half.next };
  const now = wrap(reference);
  const value = [early, early + NOON].find((minute) => minute >= now) ?? early;
  return { value, next: read.next };
}

/**
 * Reads a whole text as a time of day: "6:30 pm", "half past six".
 * Errors: one sentence saying how to write it.
 */
export function parseClock(text: string, reference: number): Result<number, string> {
  const words = spokenWords(text);
  const read = parseSpokenClock(words, words[0] === "at" ? 1 : 0, reference);
  if (read?.next !== words.length)
    return err(`"${text}" is not a time of day; say it like half past six or 6:30 pm.`);
  return ok(read.value);
}
