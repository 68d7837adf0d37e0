import type { Amount, Measured } from "./amount.ts";
import { measured } from "./amount.ts";
import type { Rational } from "./rational.ts";
import { div, mul, ratio, rational, toNumber } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";
import type { Grams, Milliliters } from "./quantity.ts";
import { grams, milliliters } from "./quantity.ts";
import type { Unit } from "./unit.ts";
import { unitWords } from "./unit.ts";
import { capital } from "./capital.ts";

/** The exact size of one unit: millilitres for volumes, grams for masses, and where the figure comes from. */
export type Measure = { readonly size: Rational; readonly source: string };

const US = "NIST Handbook 44, appendix C: gallon of 231 cubic inches, inch of 2.54 cm";
const AVOIRDUPOIS = "NIST Handbook 44, appendix C: pound of 0.453 592 37 kg, ounce of 1/16 lb";
const IMPERIAL = "UK Weights and Measures Act 1985, schedule 1: gallon of 4.546 09 dm3";
const LABEL = "21 CFR 101.9(b)(5)(viii): household measures on nutrition labels";
const METRIC = "SI prefixes, NIST SP 811, section 4.3; litre, table 6";
const AUSTRALIAN = "Standards Australia AS 1325 (from memory): cup 250 mL, tablespoon 20 mL, teaspoon 5 mL";
const METRIC_SPOON = "Common practice, no source: metric tablespoon 15 mL, teaspoon 5 mL";

/** 231 x 2.54^3 cubic centimetres. */
const GALLON = ratio(3_785_411_784, 1_000_000);
const IMPERIAL_GALLON = ratio(454_609, 100);
const POUND = ratio(45_359_237, 100_000);

const of = (size: Rational, source: string): Measure => ({ size, source });
const part = (whole: Rational, parts: number): Rational => div(whole, ratio(parts));

/**
 * Units of fixed size. Pinches, cloves and cans are missing on purpose: nobody has fixed them,
 * and unknown is not nought. The US cup of cooking (236.5882365 mL) and the label cup (240 mL) stay apart.
 */
const MEASURES: ReadonlyMap<Unit, Measure> = new Map<Unit, Measure>([
  ["mg", of(ratio(1, 1000), METRIC)],
  ["g", of(ratio(1), METRIC)],
  ["kg", of(ratio(1000), METRIC)],
  ["lb", of(POUND, AVOIRDUPOIS)],
  ["oz", of(part(POUND, 16), AVOIRDUPOIS)],
  ["ml", of(ratio(1), METRIC)],
  ["cl", of(ratio(10), METRIC)],
  ["dl", of(ratio(100), METRIC)],
  ["l", of(ratio(1000), METRIC)],
  ["gallon", of(GALLON, US)],
  ["quart", of(part(GALLON, 4), US)],
  ["pint", of(part(GALLON, 8), US)],
  ["cup", of(part(GALLON, 16), US)],
  ["fl-oz", of(part(GALLON, 128), US)],
  ["tbsp", of(part(GALLON, 256), US)],
  ["tsp", of(part(GALLON, 768), US)],
  ["imperial-gallon", of(IMPERIAL_GALLON, IMPERIAL)],
  ["imperial-quart", of(part(IMPERIAL_GALLON, 4), IMPERIAL)],
  ["imperial-pint", of(part(IMPERIAL_GALLON, 8), IMPERIAL)],
  ["imperial-cup", of(part(IMPERIAL_GALLON, 16), IMPERIAL)],
  ["imperial-fl-oz", of(part(IMPERIAL_GALLON, 160), IMPERIAL)],
  ["metric-tsp", of(ratio(5), METRIC_SPOON)],
  ["metric-tbsp", of(ratio(15), METRIC_SPOON)],
  ["metric-cup", of(ratio(250), AUSTRALIAN)],
  ["australian-tbsp", of(ratio(20), AUSTRALIAN)],
  ["label-tsp", of(ratio(5), LABEL)],
  ["label-tbsp", of(ratio(15), LABEL)],
  ["label-fl-oz", of(ratio(30), LABEL)],
  ["label-cup", of(ratio(240), LABEL)],
]);

/** The exact size of a unit in millilitres or grams, or null for one that has no fixed size. */
export const measureOf = (unit: Unit): Measure | null => MEASURES.get(unit) ?? null;

/**
 * The same amount in another unit, exactly.
 * Errors: one sentence when there is no figure, no fixed size, or when volume would have to become weight.
 */
export function convert(amount: Amount, unit: Unit): Result<Measured, string> {
  if (amount.kind === "to-taste") return err("It goes in to taste, so there is no figure to convert.");
  if (amount.unit === unit) return ok(amount);
  const [from, to] = [measureOf(amount.unit), measureOf(unit)];
  const [fromWords, toWords] = [unitWords(amount.unit), unitWords(unit)];
  if (from === null)
    return err(`A ${fromWords.one} has no fixed size, so I cannot turn it into ${toWords.many}.`);
  if (to === null) return err(`A ${toWords.one} has no fixed size, so I cannot count in ${toWords.many}.`);
  if (fromWords.dimension !== toWords.dimension) {
    const told = { mass: "weight", volume: "volume", count: "number", bit: "number" } as const;
    return err(
      `${capital(fromWords.many)} measure ${told[fromWords.dimension]} and ${toWords.many} measure ${told[toWords.dimension]}. Weigh it, or ask for a ${told[fromWords.dimension]}.`,
    );
  }
  const factor = div(from.size, to.size);
  return ok(measured(mul(rational(amount.low), factor), unit, mul(rational(amount.high), factor)));
}

/** The mass of an amount in grams, or null when it is no mass: a volume needs the food's own weight per cup. */
export function massOf(amount: Amount): { readonly low: Grams; readonly high: Grams } | null {
  const converted = convert(amount, "g");
  if (!converted.ok) return null;
  const { low, high } = converted.value;
  return { low: grams(toNumber(rational(low))), high: grams(toNumber(rational(high))) };
}

/** The volume of an amount in millilitres, or null when it is no volume. */
export function volumeOf(amount: Amount): { readonly low: Milliliters; readonly high: Milliliters } | null {
  const converted = convert(amount, "ml");
  if (!converted.ok) return null;
  const { low, high } = converted.value;
  return { low: milliliters(toNumber(rational(low))), high: milliliters(toNumber(rational(high))) };
}
