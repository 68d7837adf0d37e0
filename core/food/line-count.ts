import { NUMBER, parseAmount } from "../units/amount.ts";
import { parseSpokenNumber } from "../units/number-words.ts";
import type { Rational } from "../units/rational.ts";
import { ONE, ZERO, compare, ratio, rational } from "../units/rational.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";

/** How many, from the least to the most, and the text behind it. */
export interface Count {
  readonly low: Rational;
  readonly high: Rational;
  readonly rest: string;
}

const FIGURES = new RegExp(`^${NUMBER}(?:\\s*(?:-|–|—|to|or)\\s*${NUMBER})?`, "is");
const HEDGE = /^(?:(?:about|around|roughly|approximately|circa)\s+|(?:approx|ca)\b\.?\s*|[~≈]\s*)/i;

/** More of anything, in any unit, than a home kitchen holds (common practice, no source). */
const MOST = ratio(100_000);

/** Without "about" and the like: an amount in a recipe is never meant to the gram. */
export const unhedged = (text: string): string => text.replace(HEDGE, "");

function checked(count: Count, text: string): Result<Count, string> {
  if (compare(count.low, count.high) > 0) {
    return err(`"${text}" runs backwards; write the smaller number first.`);
  }
  if (count.high === ZERO) return err(`"${text}" is nothing at all; leave the ingredient out instead.`);
  if (compare(count.high, MOST) > 0)
    return err(`"${text}" is more than any kitchen holds; check the number.`);
  return ok(count);
}

function figures(text: string, whole: string): Result<Count | null, string> {
  const written = FIGURES.exec(text)?.[0];
  if (written === undefined) return ok(null);
  const read = parseAmount(written);
  const rest = text.slice(written.length);
  if (!read.ok) {
    return err(read.error.replace(/^"[^"]*"(?= (?:runs|is nothing))/, `"${whole}"`));
  }
  // "80% rye bread" counts nothing.
  if (read.value.kind === "to-taste" || /^\s*%/.test(rest)) return ok(null);
  const isTorn = /^(?:[^\p{L}\s(x×"-]|[-"](?!\p{L})|(?![x×])\p{L}\d)/u.test(rest);
  if (isTorn)
    return err(`"${rest.trim()}" cannot be read; write one number before the unit, like 1 1/2 cups.`);
  return checked({ low: rational(read.value.low), high: rational(read.value.high), rest }, whole);
}

function inWords(text: string, whole: string): Result<Count | null, string> {
  if (!/^\p{L}/u.test(text)) return ok(null);
  const words = text.split(" ");
  const lower = words.map((word) => word.toLowerCase());
  const first = parseSpokenNumber(lower, 0);
  if (first === null) return ok(null);
  const joins = /^(?:to|or)$/.test(lower[first.next] ?? "");
  const last = (joins ? parseSpokenNumber(lower, first.next + 1) : null) ?? first;
  const rest = words.slice(last.next).join(" ");
  return checked({ low: first.value, high: last.value, rest }, whole);
}

/** "A" and "an" are one, but for what counts nothing: "a few", "a little". */
function article(text: string): Count | null {
  const match = /^an?\s+(?!(?:few|little|lot|bit|touch)\b)(.+)$/is.exec(text);
  return match === null ? null : { low: ONE, high: ONE, rest: match[1] ?? "" };
}

/**
 * The number that a text begins with, in figures or words: "1 1/2-2", "half a", "a dozen", "a". Null where none stands.
 * @param whole the line, to be quoted in the sentence
 * Errors: one sentence for a number that cannot be meant (nought, divided by nought, backwards, beyond all kitchens).
 */
export function readCount(text: string, whole: string): Result<Count | null, string> {
  if (/^(?:[-−]\s*[\d.¼-¾⅐-⅞]|minus\b)/i.test(text)) {
    return err(`"${whole}" is less than nothing; write a number above nought.`);
  }
  const figure = figures(text, whole);
  if (!figure.ok || figure.value !== null) return figure;
  const spoken = inWords(text, whole);
  if (!spoken.ok || spoken.value !== null) return spoken;
  return ok(article(text));
}
