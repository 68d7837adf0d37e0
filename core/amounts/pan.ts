import { compare, div, mul, parseRational, ratio, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";

/** The bottom of a pan, in centimetres. */
export type Pan =
  | { readonly shape: "round"; readonly across: Rational }
  | { readonly shape: "square"; readonly side: Rational }
  | { readonly shape: "oblong"; readonly long: Rational; readonly wide: Rational };

const INCH = ratio(254, 100);
const MILLIMETRE = ratio(1, 10);
/** Of a circle, to a ten-millionth; it must be exact, or there and back would not be the same. */
const PI = ratio(355, 113);
const FOUR = ratio(4);
const [SMALLEST, LARGEST] = [ratio(3), ratio(80)];

const NUMBER = String.raw`(\d+(?:\.\d+)?(?:\s+\d+\/\d+)?|\d+\/\d+)`;
const UNIT = String.raw`\s*-?\s*(inch(?:es)?|in\b\.?|"|cm|centimet(?:er|re)s?|mm)?`;
const WRITTEN = new RegExp(
  `^${NUMBER}${UNIT}(?:\\s*(?:x|×|by)\\s*${NUMBER}${UNIT})?\\s*(round|square|oblong|rectangular)?$`,
  "i",
);

function sizeOf(unit: string): Rational {
  if (/^(?:in|")/i.test(unit)) return INCH;
  return /^mm/i.test(unit) ? MILLIMETRE : ratio(1);
}

const example = "write it like 9 inch round, 20 cm square or 9 x 13 inch.";

function lengths(text: string, written: RegExpExecArray): Result<readonly Rational[], string> {
  const [, first, unit, second, lastUnit] = written;
  const named = lastUnit ?? unit;
  if (named === undefined) return err(`"${text}" lacks its unit; ${example}`);
  const read = [first, second].flatMap((one) => (one === undefined ? [] : [parseRational(one)]));
  const sizes = read.flatMap((one) => (one.ok ? [mul(one.value, sizeOf(named))] : []));
  if (sizes.length < read.length) return err(`"${text}" is no pan; ${example}`);
  return sizes.every((size) => compare(size, SMALLEST) >= 0 && compare(size, LARGEST) <= 0)
    ? ok(sizes)
    : err(`"${text}" is the size of no pan; check the figure and its unit.`);
}

/**
 * Reads a pan by its bottom: "9 inch round", "20 cm square", "9 x 13 inch", "23 by 33 cm".
 * Error: one sentence.
 */
export function readPan(text: string): Result<Pan, string> {
  const plain = text
    .trim()
    .replace(/\b(?:pan|tin|dish|tray|cake)\b/gi, "")
    .replace(/-/g, " ")
    .trim();
  const turned = plain.replace(/^(round|square|oblong|rectangular)\s+(.*)$/i, "$2 $1");
  const written = WRITTEN.exec(turned);
  if (written === null) return err(`"${text}" is no pan; ${example}`);
  const sizes = lengths(text, written);
  if (!sizes.ok) return sizes;
  const [first = ratio(0), second] = sizes.value;
  const shape = written[5]?.toLowerCase();
  if (second !== undefined)
    return shape === undefined || shape === "oblong" || shape === "rectangular"
      ? ok({ shape: "oblong", long: first, wide: second })
      : err(`"${text}" has two lengths, so it is not ${shape}; ${example}`);
  if (shape === "round") return ok({ shape, across: first });
  if (shape === "square") return ok({ shape, side: first });
  return err(`"${text}" does not say whether it is round or square; ${example}`);
}

/** What a pan's bottom covers, in square centimetres. */
export function panArea(pan: Pan): Rational {
  switch (pan.shape) {
    case "round":
      return div(mul(PI, mul(pan.across, pan.across)), FOUR);
    case "square":
      return mul(pan.side, pan.side);
    case "oblong":
      return mul(pan.long, pan.wide);
  }
}

/** How many times as much goes into another pan, as deep as before. */
export const panFactor = (from: Pan, to: Pan): Rational => div(panArea(to), panArea(from));
