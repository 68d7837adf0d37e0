import type { Food } from "../food/food.ts";
import { weigh } from "../food/weigh.ts";
import type { Ingredient } from "../recipe/model.ts";
import { measured, type Measured } from "../units/amount.ts";
import { compare, div, mul, ONE, ratio, rational, ZERO, type Rational } from "../units/rational.ts";
import { BUNDLES } from "./bundle-table.ts";
import { addRanges, parcelOf, together, weightOf, type Parcel, type Range } from "./parcel.ts";
import { inNamedUnit, type Thing } from "./thing.ts";

/** What is wanted of a part: "the juice, 7 tablespoons". */
export interface PartNeed {
  readonly part: string;
  /** What one of the whole yields, in grams. */
  readonly yields: Rational;
  readonly parcels: readonly Parcel[];
}

/** What is wanted of a thing: all of it, and parts of it. */
export interface Need {
  readonly whole: readonly Parcel[];
  readonly parts: readonly PartNeed[];
}

/** A head of garlic is so many cloves. */
function unbundled(amount: Measured, food: Food | null): Measured {
  const bundle = BUNDLES.get(food?.name ?? "");
  if (bundle === undefined) return amount;
  if (bundle.also.includes(amount.unit)) return { ...amount, unit: bundle.of };
  if (amount.unit !== bundle.sold && amount.unit !== bundle.soldAlso) return amount;
  const holds = ratio(bundle.holds);
  return measured(mul(rational(amount.low), holds), bundle.of, mul(rational(amount.high), holds));
}

/** An ingredient, or what is in the house of it, as a parcel of its thing. */
export function parcelIn(
  { food, part }: Thing,
  amount: Measured,
  item: string,
  preparation: string | null,
): Parcel {
  const of = part === null ? food : part.food;
  return parcelOf(unbundled(inNamedUnit(amount, item, of), of), of, item, preparation);
}

/** Everything that ingredients want of one thing, added up. */
export function needOf(wanted: readonly { readonly thing: Thing; readonly ingredient: Ingredient }[]): Need {
  const whole: Parcel[] = [];
  const parts = new Map<string, { readonly thing: Thing; readonly parcels: Parcel[] }>();
  for (const { thing, ingredient } of wanted) {
    const { amount, item, preparation } = ingredient;
    if (amount.kind === "to-taste") continue;
    const parcel = parcelIn(thing, amount, item, preparation);
    if (thing.part === null) {
      whole.push(parcel);
      continue;
    }
    const known = parts.get(thing.part.of.part) ?? { thing, parcels: [] };
    known.parcels.push(parcel);
    parts.set(thing.part.of.part, known);
  }
  return {
    whole: together(whole, wanted[0]?.thing.food ?? null),
    parts: [...parts].map(([part, { thing, parcels }]) => ({
      part,
      yields: thing.part?.of.yields ?? ONE,
      parcels: together(parcels, thing.part?.food ?? null),
    })),
  };
}

const NONE: Range = { low: ZERO, high: ZERO };

const most = (a: Range, b: Range): Range => ({
  low: compare(a.low, b.low) < 0 ? b.low : a.low,
  high: compare(a.high, b.high) < 0 ? b.high : a.high,
});

/** How many of the whole give this part; "the juice of two" says so itself, and a splash is in any one. */
function forPart({ parcels, yields }: PartNeed): Range {
  const inAll = parcels
    .map(({ amount, grams }): Range => {
      if (amount.unit === "piece") return { low: rational(amount.low), high: rational(amount.high) };
      return grams === null ? NONE : { low: div(grams.low, yields), high: div(grams.high, yields) };
    })
    .reduce(addRanges, NONE);
  return inAll.high === ZERO ? most(inAll, { low: ZERO, high: ONE }) : inAll;
}

/** How many pieces a parcel of the whole is; none where nobody can tell. */
export function inPieces({ amount, grams }: Parcel, food: Food | null): Range | null {
  if (amount.unit === "piece") return { low: rational(amount.low), high: rational(amount.high) };
  if (grams === null || food === null) return null;
  const one = weigh(food, measured(ONE, "piece"), food.name, null);
  return one.ok ? { low: div(grams.low, one.value.high), high: div(grams.high, one.value.low) } : null;
}

/**
 * How many to buy where parts are wanted: juice and zest come from the same lemons, and what goes in whole is more.
 */
export function piecesOf({ whole, parts }: Need, food: Food | null): Range {
  const eaten = whole.map((parcel) => inPieces(parcel, food) ?? NONE).reduce(addRanges, NONE);
  return addRanges(eaten, parts.map(forPart).reduce(most, NONE));
}

/** What a need without parts weighs, without refuse; null: not known, or it is nothing. */
export const weightOfNeed = ({ whole, parts }: Need): Range | null =>
  whole.length === 0 || parts.length > 0 ? null : weightOf(whole);
