import type { Rational } from "./rational.ts";
import { ONE, ZERO, add, compare, div, mixed, mul, parseRational, ratio, terms } from "./rational.ts";
import type { SpokenValue } from "./spoken-words.ts";

const SMALL = [
  "zero",
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
  "twelve",
  "thirteen",
  "fourteen",
  "fifteen",
  "sixteen",
  "seventeen",
  "eighteen",
  "nineteen",
];
const TENS = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/** Names of the parts of a whole, by denominator; 2 and 4 have the kitchen's own names. */
const PARTS = [
  "",
  "",
  "half",
  "third",
  "quarter",
  "fifth",
  "sixth",
  "seventh",
  "eighth",
  "ninth",
  "tenth",
  "eleventh",
  "twelfth",
  "thirteenth",
  "fourteenth",
  "fifteenth",
  "sixteenth",
  "seventeenth",
  "eighteenth",
  "nineteenth",
  "twentieth",
];
const PARTS_MANY = PARTS.map((part) => (part === "half" ? "halves" : `${part}s`));

/**
 * A whole number in words, US style without "and": 365 is "three hundred sixty-five".
 * Throws outside 0 to 999,999 and for fractions (a bug of the caller's).
 */
export function numberWords(n: number): string {
  if (!Number.isInteger(n) || n < 0 || n > 999_999) throw new Error(`no words for ${String(n)}`);
  const [thousands, hundreds, rest] = [Math.floor(n / 1000), Math.floor((n % 1000) / 100), n % 100];
  const said = [
    thousands === 0 ? "" : `${numberWords(thousands)} thousand`,
    hundreds === 0 ? "" : `${SMALL[hundreds] ?? ""} hundred`,
    rest === 0 && n !== 0 ? "" : belowHundred(rest),
  ];
  return said.filter((part) => part !== "").join(" ");
}

function belowHundred(n: number): string {
  const small = SMALL[n];
  if (small !== undefined) return small;
  const ones = n % 10;
  const tens = TENS[(n - ones) / 10] ?? "";
  return ones === 0 ? tens : `${tens}-${SMALL[ones] ?? ""}`;
}

/**
 * An exact number as a cook says it: "three", "a half", "two thirds", "three and three quarters".
 * Denominators beyond twenty are said "five over sixty-four". Throws when negative or beyond 999,999.
 */
export function spokenNumber(value: Rational): string {
  const { whole, part } = mixed(value);
  if (part === ZERO) return numberWords(Number(whole));
  return whole === 0n ? partWords(part) : `${numberWords(Number(whole))} and ${partWords(part)}`;
}

function partWords(part: Rational): string {
  const { numerator, denominator } = terms(part);
  const one = PARTS[Number(denominator)];
  if (one === undefined) return `${numberWords(Number(numerator))} over ${numberWords(Number(denominator))}`;
  if (numerator === 1n) return one.startsWith("e") ? `an ${one}` : `a ${one}`;
  return `${numberWords(Number(numerator))} ${PARTS_MANY[Number(denominator)] ?? ""}`;
}

/** Figures after the decimal point one by one: 236.6 to one place is "two hundred thirty-six point six". */
export function decimalWords(value: Rational, places: number): string {
  const scale = 10n ** BigInt(places);
  const scaled = mixed(add(mul(value, ratio(scale)), ratio(1, 2))).whole;
  const digits = String(scaled % scale)
    .padStart(places, "0")
    .replace(/0+$/, "");
  const whole = numberWords(Number(scaled / scale));
  if (places === 0 || digits === "") return whole;
  return `${whole} point ${[...digits].map((digit) => SMALL[Number(digit)] ?? "").join(" ")}`;
}

function digitAt(words: readonly string[], at: number): number {
  const word = words[at] ?? "";
  return word === "oh" || word === "nought" ? 0 : SMALL.slice(0, 10).indexOf(word);
}

/** "one five" read out figure by figure is 15; a single figure is no such reading. */
function readDigits(words: readonly string[], from: number): SpokenValue<number> | null {
  let [value, next] = [0, from];
  while (digitAt(words, next) >= 0 && next - from < 6) {
    value = value * 10 + digitAt(words, next);
    next += 1;
  }
  return next - from >= 2 ? { value, next } : null;
}

function readBelowHundred(words: readonly string[], at: number): SpokenValue<number> | null {
  const word = words[at] ?? "";
  const tens = word === "" ? -1 : TENS.indexOf(word);
  if (tens >= 2) {
    const ones = digitAt(words, at + 1);
    return ones > 0 ? { value: tens * 10 + ones, next: at + 2 } : { value: tens * 10, next: at + 1 };
  }
  const small = word === "nought" ? 0 : SMALL.indexOf(word);
  return small < 0 ? null : { value: small, next: at + 1 };
}

type Reader = (words: readonly string[], at: number) => SpokenValue<number> | null;

/** The rest of a number after an optional "and": "(and) twenty five". What counts parts is no rest: "and one third". */
function readTail(words: readonly string[], at: number, read: Reader): SpokenValue<number> | null {
  if (words[at] === "and" && readPart(words, at + 1) !== null) return null;
  const tail = read(words, words[at] === "and" ? at + 1 : at);
  return tail === null || tail.value === 0 || countsParts(words, tail) ? null : tail;
}

function readBelowThousand(words: readonly string[], from: number): SpokenValue<number> | null {
  const isArticle = words[from] === "a" && words[from + 1] === "hundred";
  const head = isArticle ? { value: 1, next: from + 1 } : readBelowHundred(words, from);
  if (head === null || head.value === 0 || words[head.next] !== "hundred") return head;
  const tail = readTail(words, head.next + 1, readBelowHundred);
  if (tail === null) return { value: head.value * 100, next: head.next + 1 };
  return { value: head.value * 100 + tail.value, next: tail.next };
}

/** Whether the number just read counts parts ("and one quarter") rather than belonging to the whole before it. */
function countsParts(words: readonly string[], tail: SpokenValue<number>): boolean {
  const name = words[tail.next] ?? "";
  return name.endsWith("s") ? denominatorOf(name) > 0 : tail.value < denominatorOf(name);
}

/** A whole number in words, from word `from` on; null where none stands. */
function readWhole(words: readonly string[], from: number): SpokenValue<number> | null {
  const isArticle = words[from] === "a" && words[from + 1] === "thousand";
  const digits = readDigits(words, from);
  if (digits !== null && words[digits.next] !== "hundred" && words[digits.next] !== "thousand") return digits;
  const head = isArticle ? { value: 1, next: from + 1 } : readBelowThousand(words, from);
  if (head === null || head.value === 0 || words[head.next] !== "thousand") return head;
  const tail = readTail(words, head.next + 1, readBelowThousand);
  if (tail === null || tail.value > 999) return { value: head.value * 1000, next: head.next + 1 };
  return { value: head.value * 1000 + tail.value, next: tail.next };
}

/** A figure as typed, with a fraction figure behind it: "12", "1.5", "1/2", or "1" then "1/2". */
function readFigure(words: readonly string[], from: number): SpokenValue<Rational> | null {
  const word = words[from] ?? "";
  if (!/^[\d.]/.test(word)) return null;
  const second = words[from + 1] ?? "";
  if (/^\d+$/.test(word) && /^\d+\/\d+$/.test(second)) {
    const both = parseRational(`${word} ${second}`);
    if (both.ok) return { value: both.value, next: from + 2 };
  }
  const alone = parseRational(word);
  return alone.ok ? { value: alone.value, next: from + 1 } : null;
}

function denominatorOf(word: string): number {
  if (word === "") return 0;
  if (word === "fourth" || word === "fourths") return 4;
  return Math.max(PARTS.indexOf(word), PARTS_MANY.indexOf(word), 0);
}

/** Steps over "of a" and "a" behind a fraction, so that "half a" and "a quarter of a" end at the unit. */
function overArticle(words: readonly string[], at: number): number {
  const isArticle = (index: number): boolean => words[index] === "a" || words[index] === "an";
  if (words[at] === "of" && isArticle(at + 1)) return at + 2;
  return isArticle(at) ? at + 1 : at;
}

/** A fraction alone: "half", "a quarter", "two thirds", "three fourths", "five over sixty four". */
function readPart(words: readonly string[], from: number): SpokenValue<Rational> | null {
  const first = words[from] ?? "";
  if (first === "half" || first === "quarter")
    return { value: ratio(1, denominatorOf(first)), next: from + 1 };
  const count = first === "a" || first === "an" ? { value: 1, next: from + 1 } : readWhole(words, from);
  if (count === null) return null;
  const name = words[count.next] ?? "";
  if (name === "over") {
    const below = readWhole(words, count.next + 1);
    return below === null || below.value === 0
      ? null
      : { value: ratio(count.value, below.value), next: below.next };
  }
  const denominator = denominatorOf(name);
  if (denominator === 0) return null;
  // "twenty fifth" is an ordinal; a singular name belongs to less than a whole only.
  const isPlural = name.endsWith("s");
  if (!isPlural && (count.value >= denominator || (name === "half" && count.value !== 1))) return null;
  return { value: ratio(count.value, denominator), next: count.next + 1 };
}

function readDozen(words: readonly string[], from: number): SpokenValue<Rational> | null {
  const isArticle = words[from] === "a";
  if (isArticle && words[from + 1] === "couple") {
    return { value: ratio(2), next: words[from + 2] === "of" ? from + 3 : from + 2 };
  }
  if (words[from] === "half" && words[from + 1] === "a" && words[from + 2] === "dozen") {
    return { value: ratio(6), next: from + 3 };
  }
  const count = isArticle ? { value: 1, next: from + 1 } : readBelowHundred(words, from);
  if (count === null || words[count.next] !== "dozen") return null;
  return { value: ratio(count.value * 12), next: count.next + 1 };
}

/** "point two five" behind a whole number, or alone. */
function readPoint(words: readonly string[], at: number): SpokenValue<Rational> | null {
  if (words[at] !== "point") return null;
  let [value, next] = [ZERO, at + 1];
  let place = ratio(1, 10);
  while (digitAt(words, next) >= 0) {
    value = add(value, mul(ratio(digitAt(words, next)), place));
    place = div(place, ratio(10));
    next += 1;
  }
  return next > at + 1 ? { value, next } : null;
}

/**
 * A number within a sentence, from word `from` on (words as `spokenWords` makes them).
 * Reads "twenty five", "two hundred and fifty", "one and a half", "two thirds", "half a", "three quarters of a",
 * "a dozen", "a couple of", "one point five", "one five" (15), and figures as typed: "12", "1 1/2".
 * A bare "a" is no number here; the duration and amount parsers take it before a unit. Null where no number stands.
 */
export function parseSpokenNumber(words: readonly string[], from: number): SpokenValue<Rational> | null {
  const dozen = readDozen(words, from);
  if (dozen !== null) return dozen;
  const figure = readFigure(words, from);
  const part = figure === null ? readPart(words, from) : null;
  if (part !== null) return { value: part.value, next: overArticle(words, part.next) };
  const decimal = readPoint(words, from);
  if (decimal !== null) return decimal;
  const spoken = figure === null ? readWhole(words, from) : null;
  const whole = figure ?? (spoken === null ? null : { value: ratio(spoken.value), next: spoken.next });
  if (whole === null) return null;
  const digits = readPoint(words, whole.next);
  if (digits !== null) return { value: add(whole.value, digits.value), next: digits.next };
  const extra = words[whole.next] === "and" ? readPart(words, whole.next + 1) : null;
  if (extra === null || compare(extra.value, ONE) >= 0) return whole;
  return { value: add(whole.value, extra.value), next: extra.next };
}
