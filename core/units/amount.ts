import type { Rational } from "./rational.ts";
import { ONE, ZERO, compare, formatRational, mul, parseRational, rational } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";
import type { Unit } from "./unit.ts";
import { findUnit, unitWords } from "./unit.ts";

export type { Unit } from "./unit.ts";

/**
 * How much of something. `low` and `high` are stored rationals "n/d", equal when the amount is exact.
 * A thing counted without a unit ("2 carrots") has the unit `piece`.
 */
export type Amount =
  | { readonly kind: "measured"; readonly low: string; readonly high: string; readonly unit: Unit }
  | { readonly kind: "to-taste" };

/** An amount that has figures. */
export type Measured = Extract<Amount, { readonly kind: "measured" }>;

/** A measured amount from its ends; leave out `high` for an exact one. Throws when the ends are out of order. */
export function measured(low: Rational, unit: Unit, high: Rational = low): Measured {
  if (compare(low, high) > 0) throw new Error(`amount runs backwards: ${low} to ${high} ${unit}`);
  return { kind: "measured", low, high, unit };
}

/** The pattern of a number in figures, without groups: "3", "1.5", ".5", "2/3", "1 1/2", "1½". */
export const NUMBER = String.raw`(?:\d*\.\d+|(?:\d+\s*)?[¼-¾⅐-⅞]|(?:\d+\s+)?\d+\s*[/⁄]\s*\d+|\d+)`;
const AMOUNT = new RegExp(`^(${NUMBER}|an?(?=\\s))(?:\\s*(-|–|—|to|or)\\s*(${NUMBER}))?(.*)$`, "is");
const TO_TASTE = /^(?:to|as per|according to)\s+taste$/i;

/** "1-1/2" is the old way to write one and a half, not a range that runs backwards. */
function ends(low: Rational, join: string, high: Rational): readonly [Rational, Rational] {
  const isHyphenated = join === "-" && low.endsWith("/1") && compare(high, ONE) < 0;
  if (!isHyphenated) return [low, high];
  const glued = parseRational(`${low.slice(0, -2)} ${high}`);
  return glued.ok ? [glued.value, glued.value] : [low, high];
}

function readNumber(text: string): Result<Rational, string> {
  return /^an?$/i.test(text) ? ok(ONE) : parseRational(text);
}

/**
 * Reads an amount with its unit and nothing else: "1 1/2 cups", "2-3 cloves", "½ tsp", "3", "a pinch", "to taste".
 * Errors: one sentence saying what could not be read and how to write it.
 */
export function parseAmount(text: string): Result<Amount, string> {
  const trimmed = text.trim();
  if (TO_TASTE.test(trimmed)) return ok({ kind: "to-taste" });
  const match = AMOUNT.exec(trimmed);
  if (match?.[1] === undefined) {
    return err(`"${text}" is not an amount; write a number and a unit, like 1 1/2 cups.`);
  }
  const first = readNumber(match[1]);
  if (!first.ok) return first;
  const second = match[3] === undefined ? first : readNumber(match[3]);
  if (!second.ok) return second;
  const named = (match[4] ?? "").trim();
  const unit = named === "" ? "piece" : findUnit(named);
  if (unit === null) return err(`"${named}" is not a unit I know; write one like cups, grams or cloves.`);
  const [low, high] =
    second === first ? [first.value, second.value] : ends(first.value, match[2] ?? "", second.value);
  if (compare(low, high) > 0) return err(`"${text}" runs backwards; write the smaller number first.`);
  if (compare(high, ZERO) === 0) return err(`"${text}" is nothing at all; leave the ingredient out instead.`);
  return ok(measured(low, unit, high));
}

/** The written form that `parseAmount` reads back to the same amount: "1 1/2 cups", "2-3 cloves", "3". */
export function formatAmount(amount: Amount): string {
  if (amount.kind === "to-taste") return "to taste";
  const [low, high] = [rational(amount.low), rational(amount.high)];
  const figure = low === high ? formatRational(low) : `${formatRational(low)} to ${formatRational(high)}`;
  if (amount.unit === "piece") return figure;
  const words = unitWords(amount.unit);
  return `${figure} ${compare(high, ONE) > 0 ? words.many : words.one}`;
}

/** The same amount for a batch `factor` times as large; "to taste" stays as it is. */
export function scaleAmount(amount: Amount, factor: Rational): Amount {
  if (amount.kind === "to-taste") return amount;
  return measured(mul(rational(amount.low), factor), amount.unit, mul(rational(amount.high), factor));
}
