import type { Amount, Measured } from "./amount.ts";
import { measured } from "./amount.ts";
import type { KitchenFigure } from "./kitchen-figure.ts";
import { isMetric, kitchenFigure } from "./kitchen-figure.ts";
import { convert } from "./measures.ts";
import { decimalWords, parseSpokenNumber, spokenNumber } from "./number-words.ts";
import type { Rational } from "./rational.ts";
import { ONE, VULGAR, ZERO, compare, mixed, ratio, rational, terms, toNumber } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";
import type { SpokenValue } from "./spoken-words.ts";
import type { Unit, UnitWords } from "./unit.ts";
import { findUnit, unitWords } from "./unit.ts";

const HALF = ratio(1, 2);
const QUARTER = ratio(1, 4);

function article(noun: string): string {
  return /^(?:[aeio]|un|us$)/i.test(noun) ? "an" : "a";
}

/** A number for a scale or jug: quarters as fractions, all else as decimals. */
function figureWords(value: Rational, unit: Unit): string {
  const isEven = [1n, 2n, 4n].includes(terms(value).denominator);
  return isMetric(unit) && !isEven ? decimalWords(value, 2) : spokenNumber(value);
}

/** Less than one of a unit: "half a cup", "a quarter cup", "two thirds of a cup". */
function partWords(value: Rational, words: UnitWords): string {
  const one = `${article(words.one)} ${words.one}`;
  if (value === HALF) return `half ${one}`;
  if (value === QUARTER && words.dimension !== "count") return `a quarter ${words.one}`;
  return `${spokenNumber(value)} of ${one}`;
}

function fullWords(value: Rational, unit: Unit): string {
  const words = unitWords(unit);
  if (unit === "piece") return value === HALF ? "half" : figureWords(value, unit);
  if (value === ONE && words.dimension === "bit") return `${article(words.one)} ${words.one}`;
  const isPart = compare(value, ONE) < 0 && compare(value, ZERO) > 0;
  const isEven = [2n, 3n, 4n, 8n].includes(terms(value).denominator);
  if (isPart && (!isMetric(unit) || isEven)) return partWords(value, words);
  return `${figureWords(value, unit)} ${value === ONE ? words.one : words.many}`;
}

/** The lower end of a range whose unit is said once, behind the upper end: "half (to three quarters of a cup)". */
const lowEnd = (value: Rational, unit: Unit): string => (value === HALF ? "half" : figureWords(value, unit));

const hedge = (figure: KitchenFigure, said: string): string =>
  figure.rounding === "exact" ? said : `${figure.rounding} ${said}`;

/**
 * An amount as a cook says it, to the nearest figure a cook can measure: "one and a half tablespoons",
 * "half a teaspoon", "two to three cups", "about two thirds of a cup", "to taste".
 * "About" and the like tell that the exact amount, which is kept, differs. Things without a unit are the number alone.
 */
export function spokenAmount(amount: Amount): string {
  if (amount.kind === "to-taste") return "to taste";
  const { unit } = amount;
  const high = kitchenFigure(rational(amount.high), unit);
  if (amount.low === amount.high) return hedge(high, fullWords(high.value, unit));
  const low = kitchenFigure(rational(amount.low), unit);
  if (low.value === high.value) return `about ${fullWords(high.value, unit)}`;
  const isRounded = low.rounding !== "exact" || high.rounding !== "exact";
  const isApart = compare(low.value, ONE) < 0 && compare(high.value, ONE) >= 0;
  const lowWords = isApart ? fullWords(low.value, unit) : lowEnd(low.value, unit);
  return `${isRounded ? "about " : ""}${lowWords} to ${fullWords(high.value, unit)}`;
}

const SIGNS: ReadonlyMap<string, string> = new Map(
  Object.entries(VULGAR).map(([sign, value]) => [value, sign]),
);

function figureSigns(value: Rational, unit: Unit): string {
  if (isMetric(unit)) return String(toNumber(value));
  const { whole, part } = mixed(value);
  if (part === ZERO) return String(whole);
  const sign = SIGNS.get(part);
  if (sign !== undefined) return whole === 0n ? sign : `${String(whole)}${sign}`;
  return whole === 0n ? part : `${String(whole)} ${part}`;
}

/** The screen's short form, rounded like speech and then marked: "1½ tbsp", "2–3 cloves", "≈⅔ cup", "250 g". */
export function shortAmount(amount: Amount): string {
  if (amount.kind === "to-taste") return "to taste";
  const { unit } = amount;
  const [low, high] = [kitchenFigure(rational(amount.low), unit), kitchenFigure(rational(amount.high), unit)];
  const mark =
    high.rounding === "less than" ? "<" : [low, high].every((end) => end.rounding === "exact") ? "" : "≈";
  const [lowSigns, highSigns] = [figureSigns(low.value, unit), figureSigns(high.value, unit)];
  const figure = lowSigns === highSigns ? highSigns : `${lowSigns}–${highSigns}`;
  if (unit === "piece") return `${mark}${figure}`;
  const words = unitWords(unit);
  const isPlural = words.short === words.one && compare(high.value, ONE) > 0;
  return `${mark}${figure} ${isPlural ? words.many : words.short}`;
}

/** The unit said at word `at`, the longest name first ("imperial fluid ounces" before "imperial"). */
export function parseSpokenUnit(words: readonly string[], at: number): SpokenValue<Unit> | null {
  for (const length of [3, 2, 1]) {
    const unit = at + length <= words.length ? findUnit(words.slice(at, at + length).join(" ")) : null;
    if (unit !== null) return { value: unit, next: at + length };
  }
  return null;
}

function readCount(words: readonly string[], from: number): SpokenValue<Rational> | null {
  const number = parseSpokenNumber(words, from);
  if (number !== null) return number;
  const isArticle = /^an?$/.test(words[from] ?? "");
  return isArticle && parseSpokenUnit(words, from + 1) !== null ? { value: ONE, next: from + 1 } : null;
}

/**
 * An amount within a sentence, from word `from` on (words as `spokenWords` makes them):
 * "a quarter cup", "two to three tablespoons", "a pinch", "three" (things). Null where none stands.
 */
export function parseSpokenAmount(words: readonly string[], from: number): SpokenValue<Measured> | null {
  const first = readCount(words, from);
  if (first === null || first.value === ZERO) return null;
  const joins = /^(?:to|or)$/.test(words[first.next] ?? "");
  const second = joins ? parseSpokenNumber(words, first.next + 1) : null;
  const last = second !== null && compare(first.value, second.value) <= 0 ? second : first;
  const unit = parseSpokenUnit(words, last.next);
  if (unit === null) return { value: measured(first.value, "piece", last.value), next: last.next };
  const upper = last === first ? readUpperEnd(words, unit) : null;
  if (upper !== null && compare(first.value, upper.value) < 0) {
    return { value: measured(first.value, unit.value, upper.value), next: upper.next };
  }
  return { value: measured(first.value, unit.value, last.value), next: unit.next };
}

/** "(half a cup) to two cups": the unit once more, behind the upper end. */
function readUpperEnd(words: readonly string[], unit: SpokenValue<Unit>): SpokenValue<Rational> | null {
  const count = words[unit.next] === "to" ? readCount(words, unit.next + 1) : null;
  const named = count === null ? null : parseSpokenUnit(words, count.next);
  return count !== null && named?.value === unit.value ? { value: count.value, next: named.next } : null;
}

/**
 * The answer to "how many tablespoons in a quarter cup": "four tablespoons".
 * Rounded to what can be measured, and then said with "about". Errors: one sentence from `convert`.
 */
export function spokenConversion(amount: Amount, unit: Unit): Result<string, string> {
  const converted = convert(amount, unit);
  return converted.ok ? ok(spokenAmount(converted.value)) : err(converted.error);
}
