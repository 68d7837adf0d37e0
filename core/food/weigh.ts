import { measured, type Amount, type Measured } from "../units/amount.ts";
import { convert, measureOf } from "../units/measures.ts";
import { compare, div, mul, ratio, rational, toNumber, ZERO, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import { findUnit, unitWords } from "../units/unit.ts";
import { edibleWeight, weighedAs } from "./refuse.ts";
import { SIZES, type Food, type FoodMeasure, type Size } from "./food.ts";

/** What an ingredient weighs without refuse, in grams; both ends equal where it is exact. */
export interface Weight {
  readonly low: Rational;
  readonly high: Rational;
  /** The size that was taken because the recipe names none; null: nothing had to be taken. */
  readonly assumed: Size | null;
  /** What else was taken because the recipe does not say it, as one sentence; null: nothing. */
  readonly note: string | null;
}

const least = (figures: readonly Rational[]): Rational =>
  figures.reduce((a, b) => (compare(b, a) < 0 ? b : a));
const most = (figures: readonly Rational[]): Rational =>
  figures.reduce((a, b) => (compare(b, a) > 0 ? b : a));

/** @param each what one unit may weigh, not empty */
const weightOf = (amount: Measured, each: readonly Rational[], assumed: Size | null): Weight => ({
  low: mul(rational(amount.low), least(each)),
  high: mul(rational(amount.high), most(each)),
  assumed,
  note: null,
});

/** What one of its unit weighs. */
const eachOf = ({ grams, count }: FoodMeasure): Rational => div(grams, count);

/**
 * The measures that are filled as the recipe says, else those that say nothing of it, else all: "chopped" takes the
 * chopped cup, and where nothing tells, every cup is possible.
 */
function fitting(measures: readonly FoodMeasure[], said: ReadonlySet<string>): readonly FoodMeasure[] {
  const told = measures.filter(({ how }) => how?.split(" ").some((word) => said.has(word)) === true);
  if (told.length > 0) return told;
  const plain = measures.filter(({ how }) => how === null);
  return plain.length > 0 ? plain : measures;
}

/** In millilitres; null for what is no volume. */
const volume = ({ count, unit }: FoodMeasure): Rational | null => {
  const size = unitWords(unit).dimension === "volume" ? measureOf(unit) : null;
  return size === null ? null : mul(count, size.size);
};

/** Grams in a millilitre, by the largest measure of each kind: a small one is rounded the most. */
function densities(measures: readonly FoodMeasure[]): readonly Rational[] {
  return [...new Set(measures.map(({ how }) => how))].flatMap((kind) => {
    const [largest] = measures
      .filter(({ how }) => how === kind)
      .flatMap((measure) => {
        const holds = volume(measure);
        return holds === null ? [] : [{ grams: measure.grams, holds }];
      })
      .toSorted((a, b) => compare(b.holds, a.holds));
    return largest === undefined ? [] : [div(largest.grams, largest.holds)];
  });
}

function unweighed(food: Food, { unit }: Measured, size: Size | null): string {
  const kind = size === null ? "" : `${size} `;
  const whole = size === null ? `one ${food.name}` : `a ${kind}${food.name}`;
  const thing = unit === "piece" ? whole : `a ${kind}${unitWords(unit).one} of ${food.name}`;
  return `What ${thing} weighs is not in the table; weigh it.`;
}

function byVolume(food: Food, amount: Measured, said: ReadonlySet<string>): Result<Weight, string> {
  const fit = fitting(
    food.measures.filter((measure) => volume(measure) !== null),
    said,
  );
  const own = fit.filter(({ unit }) => unit === amount.unit);
  if (own.length > 0) return ok(weightOf(amount, own.map(eachOf), null));
  const dense = densities(fit);
  const size = measureOf(amount.unit);
  if (dense.length === 0 || size === null) return err(unweighed(food, amount, null));
  return ok(
    weightOf(
      amount,
      dense.map((density) => mul(density, size.size)),
      null,
    ),
  );
}

/** "Large onion" and "onion, large" are large; "onion, diced small" is not a small one. */
function sizeOf(item: string, preparation: string | null): Size | null {
  const said = [...item.toLowerCase().split(/[\s-]+/), ...(preparation?.toLowerCase().split(/,\s*/) ?? [])];
  return SIZES.find((size) => said.includes(size)) ?? null;
}

function byCount(
  food: Food,
  amount: Measured,
  said: ReadonlySet<string>,
  size: Size | null,
): Result<Weight, string> {
  const fit = fitting(
    food.measures.filter(({ unit }) => unit === amount.unit),
    said,
  );
  const ofSize = (wanted: Size | null): readonly Rational[] =>
    fit.filter((one) => one.size === wanted).map(eachOf);
  const named = ofSize(size);
  if (named.length > 0) return ok(weightOf(amount, named, null));
  if (size !== null) return err(unweighed(food, amount, size));
  const medium = ofSize("medium");
  if (medium.length > 0) return ok(weightOf(amount, medium, "medium"));
  // One size alone says nothing of the others.
  return fit.length < 2 ? err(unweighed(food, amount, null)) : ok(weightOf(amount, fit.map(eachOf), null));
}

/** In teaspoons: between the smallest and the largest spoon that is sold for it (common practice, no source). */
const PINCH = { low: ratio(1, 32), high: ratio(1, 8) };

/** Nobody weighs a pinch: both ends are kept. Null where it is none, or a spoon of the food has no weight. */
function byPinch(food: Food, amount: Measured, said: ReadonlySet<string>): Result<Weight, string> | null {
  if (amount.unit !== "pinch" || food.measures.some(({ unit }) => unit === "pinch")) return null;
  const spoon = byVolume(food, measured(PINCH.low, "tsp", PINCH.high), said);
  if (!spoon.ok) return null;
  const { low, high } = spoon.value;
  const weight = { low: mul(rational(amount.low), low), high: mul(rational(amount.high), high) };
  return ok({
    ...weight,
    assumed: null,
    note: "A pinch is taken as a thirty-second to an eighth of a teaspoon.",
  });
}

/** "3 garlic cloves" are counted in cloves, whatever the number is of. */
function inOwnUnit(food: Food, amount: Measured, item: string): Measured {
  const unit = amount.unit === "piece" ? findUnit(item.split(" ").at(-1) ?? "") : null;
  return unit !== null && food.measures.some((measure) => measure.unit === unit)
    ? { ...amount, unit }
    : amount;
}

/** A weight is of what was bought, or of what is eaten; where the line does not say, both ends are kept. */
function withoutRefuse(food: Food, mass: Measured, item: string, preparation: string | null): Weight {
  const [low, high] = [rational(mass.low), rational(mass.high)];
  const exact: Weight = { low, high, assumed: null, note: null };
  const [least, most] = [edibleWeight(food, low), edibleWeight(food, high)];
  if (least === null || most === null || least === low) return exact;
  const percent = String(toNumber(food.refuse ?? ZERO));
  switch (weighedAs(item, preparation)) {
    case "eaten":
      return exact;
    case "bought":
      return {
        ...exact,
        low: least,
        high: most,
        note: `Weighed as bought, with ${percent} percent refuse: ${item}.`,
      };
    case "not said":
      return {
        ...exact,
        low: least,
        note: `Weighed as bought or as eaten, which is not said, with ${percent} percent refuse: ${item}.`,
      };
  }
}

/**
 * What an amount of a food weighs: a weight as it is or less the refuse, spoons and cups by the food's own measures, things by theirs.
 * Where several measures fit alike, both ends are kept.
 * @param item as in the recipe, "large yellow onion"; with the preparation it tells the size and how it is cut
 * Error: one sentence that says why it cannot be known.
 */
export function weigh(
  food: Food,
  amount: Amount,
  item: string,
  preparation: string | null,
): Result<Weight, string> {
  if (amount.kind === "to-taste") return err("It goes in to taste, so it has no weight.");
  const said = new Set(`${item} ${preparation ?? ""}`.toLowerCase().split(/[^\p{L}]+/u));
  const own = inOwnUnit(food, amount, item);
  switch (unitWords(own.unit).dimension) {
    case "mass": {
      const mass = convert(own, "g");
      if (!mass.ok) return mass;
      return ok(withoutRefuse(food, mass.value, item, preparation));
    }
    case "volume":
      return byVolume(food, own, said);
    case "bit":
      return byPinch(food, own, said) ?? byCount(food, own, said, sizeOf(item, preparation));
    case "count":
      return byCount(food, own, said, sizeOf(item, preparation));
  }
}
