import { compare, div, mul, parseRational, ratio, sub, add, terms, ZERO } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import type { Bounds } from "./food.ts";
import { roundingRule, type Printed, type Rounding } from "./label-rounding-table.ts";
import { nutrientWords } from "./nutrients.ts";

/** A figure as it stands on a label, in the unit in which its value is told (salt in grams). */
export interface LabelFigure {
  readonly figure: Rational;
  /** "Less than 1 g": the figure is only its upper end. */
  readonly isCeiling: boolean;
  /** How fine it is printed: "0.35" by hundredths. */
  readonly place: Rational;
}

const KILOJOULES = ratio(1000, 4184);
const WRITTEN = /^(?<ceiling>(?:less than|under|<)\s*)?(?<number>\d*[.,]?\d+)\s*(?<unit>[a-z]+)$/i;

/** What one of a written unit is in the unit of the value; null: it measures something else. */
function inOwnUnit(printed: Printed, unit: string): Rational | null {
  const own = printed === "salt" ? "g" : nutrientWords(printed).unit;
  const written = unit.toLowerCase();
  if (own === "kcal") {
    if (/^(?:k?cal|calories)$/.test(written)) return ratio(1);
    return written === "kj" ? KILOJOULES : null;
  }
  if (written === own) return ratio(1);
  if (written === "g" && own === "mg") return ratio(1000);
  return written === "mg" && own === "g" ? ratio(1, 1000) : null;
}

const EXAMPLES = { kcal: "120 kcal", g: "2.5 g", mg: "140 mg" } as const;

/** How a value may be written. */
export const figureExample = (printed: Printed): string =>
  printed === "salt" ? "0.35 g" : EXAMPLES[nutrientWords(printed).unit];

/** Error: one sentence. */
function unreadable(printed: Printed, text: string): string {
  if (/^[-−]\s*\d/.test(text)) return `"${text}" is less than nothing; read the label again.`;
  if (/%$/.test(text))
    return `"${text}" is a share of a day's need; write the amount itself, like ${figureExample(printed)}, or leave it out.`;
  return `"${text}" is no figure of a label; write a number and its unit, like ${figureExample(printed)}.`;
}

/**
 * Reads one value as a label prints it: "140 mg", "0.35 g", "1,2 g", "500 kJ", "less than 1 g", "<0.5 g".
 * Error: one sentence.
 */
export function readLabelFigure(printed: Printed, text: string): Result<LabelFigure, string> {
  const { ceiling, number = "", unit = "" } = WRITTEN.exec(text.trim())?.groups ?? {};
  // Three figures behind a comma may be thousands: "4,000 mg".
  if (/\d,\d{3}$/.test(number))
    return err(`"${number}" may be a thousand or one; write it without the comma, like 1000 or 1.5.`);
  const value = parseRational(number.replace(",", "."));
  const one = inOwnUnit(printed, unit);
  if (!value.ok || one === null) return err(unreadable(printed, text.trim()));
  const decimals = /[.,](\d+)$/.exec(number)?.[1]?.length ?? 0;
  const place = mul(ratio(1, 10n ** BigInt(decimals)), one);
  return ok({ figure: mul(value.value, one), isCeiling: ceiling !== undefined, place });
}

const half = ratio(1, 2);
const isWhole = (value: Rational): boolean => terms(value).denominator === 1n;
const larger = (a: Rational, b: Rational): Rational => (compare(a, b) > 0 ? a : b);

/**
 * Between which ends the true value lies that was printed so. A figure finer than the rules ask is known to half of its
 * last place.
 */
export function labelBounds(
  printed: Printed,
  { figure, isCeiling, place }: LabelFigure,
  rounding: Rounding,
): Bounds {
  const rule = roundingRule(rounding, printed);
  if (isCeiling) return { low: ZERO, high: figure };
  if (rule === null) return { low: figure, high: figure };
  if (figure === ZERO) return { low: ZERO, high: rule.noughtBelow };
  const stepFor = (isIn: (to: Rational) => boolean): Rational =>
    rule.steps.find(({ to }) => to === null || isIn(to))?.by ?? place;
  const below = stepFor((to) => compare(figure, to) <= 0);
  const above = stepFor((to) => compare(figure, to) < 0);
  const isStep = isWhole(div(figure, below));
  const [under, over] = isStep ? [below, above] : [place, place];
  return { low: larger(sub(figure, mul(under, half)), ZERO), high: add(figure, mul(over, half)) };
}
