import type { Measured } from "../units/amount.ts";
import { parseAmount } from "../units/amount.ts";
import { measureOf } from "../units/measures.ts";
import { abs, compare, div, mul, ratio, rational, sub, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import { unitWords, type Unit } from "../units/unit.ts";
import type { Food, FoodMeasure } from "./food.ts";
import { readIngredientLine } from "./ingredient-line.ts";
import type { LabelFile } from "./label-file.ts";
import { weigh } from "./weigh.ts";

/** What a label says of its serving. */
export interface Serving {
  /** What the values were printed for, in grams. */
  readonly grams: Rational;
  /** What so much of it weighs, by the label. */
  readonly measures: readonly FoodMeasure[];
}

/** A cup on a label is 240 mL and no US cup of cooking: 21 CFR 101.9(b)(5)(viii). */
const ON_LABELS: ReadonlyMap<Unit, Unit> = new Map<Unit, Unit>([
  ["cup", "label-cup"],
  ["tbsp", "label-tbsp"],
  ["tsp", "label-tsp"],
  ["fl-oz", "label-fl-oz"],
]);

const dimension = ({ unit }: Measured) => unitWords(unit).dimension;

/** What an amount is in grams or millilitres, exactly. */
const sizeOf = (amount: Measured): Rational => {
  const size = measureOf(amount.unit)?.size;
  return size === undefined ? rational(amount.low) : mul(rational(amount.low), size);
};

const HUNDRED = ratio(100);
/** Syrup is 1.4 and salt 1.2 grams in a millilitre (common practice, no source). */
const HEAVIEST = ratio(2);
/** A cup of 240 and of 250 mL are both printed. */
const TOLERANCE = ratio(1, 10);
const HEAVIEST_SERVING = ratio(2000);

function amountsOf(file: LabelFile): Result<readonly Measured[], string> {
  if (/^0+(?:[.,]0*)?(?![.,\d])/.test(file.serving))
    return err("A serving of nothing holds nothing; write the serving as the label prints it.");
  const line = readIngredientLine(file.serving);
  if (!line.ok) return err(`"${file.serving}" is no serving; write it as printed, like 1 cup (240 ml).`);
  const own = file.weighs === undefined ? null : parseAmount(file.weighs);
  if (own?.ok === false) return err(`"${file.weighs ?? ""}" is no weight; write it like 247 g.`);
  const { amount, also, each } = line.value;
  const all = [amount, also, each, own?.value ?? null].flatMap((one): readonly Measured[] =>
    one?.kind === "measured" ? [one] : [],
  );
  if (all.some(({ low, high }) => low !== high))
    return err(`"${file.serving}" is not one amount; a label tells one serving.`);
  return ok(all.map((one) => ({ ...one, unit: ON_LABELS.get(one.unit) ?? one.unit })));
}

/** In millilitres; where the label tells both, its own millilitres rather than its cup. */
function volumeIn(amounts: readonly Measured[]): Result<Measured | null, string> {
  const volumes = amounts.filter((one) => dimension(one) === "volume");
  const [first, second] = volumes;
  if (first === undefined || second === undefined) return ok(first ?? null);
  const apart = div(abs(sub(sizeOf(first), sizeOf(second))), sizeOf(second));
  return compare(apart, TOLERANCE) > 0
    ? err("The serving tells two volumes that do not fit each other; read the label again.")
    : ok(volumes.find(({ unit }) => unit === "ml") ?? first);
}

/** What the serving weighs by the label, or by the food of the table that it is like. */
function weightIn(amounts: readonly Measured[], like: Food | null): Result<Rational, string> {
  const mass = amounts.find((one) => dimension(one) === "mass");
  if (mass !== undefined) return ok(sizeOf(mass));
  const [amount] = amounts;
  const weight = amount === undefined || like === null ? null : weigh(like, amount, like.name, null);
  if (weight?.ok === true && weight.value.low === weight.value.high) return ok(weight.value.low);
  return err("The label does not tell what a serving weighs; weigh one and write it, like weighs: 247 g.");
}

const measureFrom = (amount: Measured, grams: Rational): FoodMeasure => ({
  count: rational(amount.low),
  unit: amount.unit,
  size: null,
  how: null,
  grams,
});

function gramsPrinted(file: LabelFile, grams: Rational, volume: Measured | null): Result<Rational, string> {
  switch (file.per ?? "serving") {
    case "serving":
      return ok(grams);
    case "100 g":
      return ok(HUNDRED);
    case "100 ml":
      return volume === null
        ? err(
            "The values are for 100 ml, and the serving tells no millilitres; write both, like 240 ml (247 g).",
          )
        : ok(mul(div(grams, sizeOf(volume)), HUNDRED));
  }
}

/**
 * The serving of a label: its weight and its measures.
 * @param like the food of the table that it is like; null: none
 * Error: one sentence.
 */
export function readServing(file: LabelFile, like: Food | null): Result<Serving, string> {
  const amounts = amountsOf(file);
  if (!amounts.ok) return amounts;
  const volume = volumeIn(amounts.value);
  if (!volume.ok) return volume;
  const weight = weightIn(amounts.value, like);
  if (!weight.ok) return weight;
  if (compare(weight.value, HEAVIEST_SERVING) > 0)
    return err("A serving of more than 2 kilograms is a misprint; read the label again.");
  const grams = weight.value;
  if (volume.value !== null && compare(div(grams, sizeOf(volume.value)), HEAVIEST) > 0)
    return err("A serving that weighs twice as much as water is a misprint; read the label again.");
  const things = amounts.value.filter((one) => !["mass", "volume"].includes(dimension(one)));
  const own = [...(volume.value === null ? [] : [volume.value]), ...things].map((one) =>
    measureFrom(one, grams),
  );
  const printed = gramsPrinted(file, grams, volume.value);
  return printed.ok ? ok({ grams: printed.value, measures: own }) : printed;
}

/** The measures of the table's food that the label says nothing about. */
export function sharedMeasures(own: readonly FoodMeasure[], like: Food | null): readonly FoodMeasure[] {
  const told = new Set(own.map(({ unit }) => kindOf(unit)));
  return [...own, ...(like?.measures ?? []).filter(({ unit }) => !told.has(kindOf(unit)))];
}

const kindOf = (unit: Unit): string => (unitWords(unit).dimension === "volume" ? "volume" : unit);
