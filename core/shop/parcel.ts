import type { Food } from "../food/food.ts";
import { weigh } from "../food/weigh.ts";
import { measured, type Measured } from "../units/amount.ts";
import { inKitchenUnit } from "../units/kitchen-figure.ts";
import { convert, measureOf } from "../units/measures.ts";
import { add, compare, div, mul, ONE, ratio, rational, sub, ZERO, type Rational } from "../units/rational.ts";
import { unitWords, type Unit } from "../units/unit.ts";

/** From the least to the most. */
export interface Range {
  readonly low: Rational;
  readonly high: Rational;
}

/** So much of a thing, and what it weighs. */
export interface Parcel {
  readonly amount: Measured;
  /** In grams without refuse; null: nobody can tell. */
  readonly grams: Range | null;
}

/** What measures the same way can be added up: volumes, weights, and every thing that is counted by itself. */
const familyOf = (unit: Unit): string => {
  const { dimension } = unitWords(unit);
  return dimension === "mass" || (dimension === "volume" && measureOf(unit) !== null) ? dimension : unit;
};

export const addRanges = (a: Range, b: Range): Range => ({
  low: add(a.low, b.low),
  high: add(a.high, b.high),
});

export const scaleRange = (range: Range, by: Rational): Range => ({
  low: mul(range.low, by),
  high: mul(range.high, by),
});

/** Both ends of an amount, in its own unit. */
export const rangeOf = (amount: Measured): Range => ({
  low: rational(amount.low),
  high: rational(amount.high),
});

/** An amount of a food with what it weighs, as the table tells. */
export function parcelOf(
  amount: Measured,
  food: Food | null,
  item: string,
  preparation: string | null,
): Parcel {
  const weight = food === null ? null : weigh(food, amount, item, preparation);
  const grams = weight?.ok === true ? { low: weight.value.low, high: weight.value.high } : null;
  return { amount, grams };
}

/** Both amounts together. They are of one family. */
function sum(a: Measured, b: Measured): Measured {
  const same = convert(b, a.unit);
  if (!same.ok) throw new Error(`${a.unit} and ${b.unit} cannot be added`);
  const { low, high } = addRanges(rangeOf(a), rangeOf(same.value));
  return measured(low, a.unit, high);
}

/** Adds up what measures the same way and is weighed alike; what cannot be weighed stays apart from what can. */
function addedUp(parcels: readonly Parcel[]): readonly Parcel[] {
  const groups = new Map<string, Parcel>();
  for (const parcel of parcels) {
    const key = `${familyOf(parcel.amount.unit)} ${parcel.grams === null ? "unweighed" : "weighed"}`;
    const before = groups.get(key);
    const grams =
      before?.grams === undefined || before.grams === null || parcel.grams === null
        ? parcel.grams
        : addRanges(before.grams, parcel.grams);
    groups.set(key, {
      amount: before === undefined ? parcel.amount : sum(before.amount, parcel.amount),
      grams,
    });
  }
  return [...groups.values()];
}

/** So many grams told in a thing's own unit, where the table says what one weighs. */
function counted(grams: Range, unit: Unit, food: Food): Measured | null {
  const one = weigh(food, measured(ONE, unit), food.name, null);
  if (!one.ok || one.value.low !== one.value.high) return null;
  return measured(div(grams.low, one.value.low), unit, div(grams.high, one.value.low));
}

/** What is measured in several ways and weighed: one amount, in the thing that a dish counts or else in grams. */
function joined(parcels: readonly Parcel[], food: Food): Parcel {
  const grams = parcels.map((parcel) => parcel.grams ?? { low: ZERO, high: ZERO }).reduce(addRanges);
  const things = parcels.filter(({ amount }) => unitWords(amount.unit).dimension === "count");
  const count = things.map(({ amount }) => counted(grams, amount.unit, food)).find((one) => one !== null);
  return { amount: count ?? measured(grams.low, "g", grams.high), grams };
}

/**
 * Everything together: added by weight where the table can weigh it, and side by side where it cannot.
 * @param food null: the table does not know it
 */
export function together(parcels: readonly Parcel[], food: Food | null): readonly Parcel[] {
  const sums = addedUp(parcels);
  const weighed = sums.filter(({ grams }) => grams !== null);
  const others = sums.filter(({ grams }) => grams === null);
  const one = weighed.length > 1 && food !== null ? [joined(weighed, food)] : weighed;
  return [...one, ...others].map((parcel) => ({ ...parcel, amount: tidied(parcel.amount) }));
}

/** Spoonfuls by the dozen are cups. */
const MANY = ratio(6);

function tidied(amount: Measured): Measured {
  const tidy = inKitchenUnit(amount);
  if (tidy.kind === "to-taste") return amount;
  const isSpoons = tidy.unit === "tbsp" || tidy.unit === "tsp";
  const cups = isSpoons && compare(rational(tidy.high), MANY) > 0 ? convert(tidy, "cup") : null;
  return cups?.ok === true ? cups.value : tidy;
}

/** What all of it weighs; null where the weight of some is not known. */
export function weightOf(parcels: readonly Parcel[]): Range | null {
  return parcels.reduce<Range | null>(
    (total, { grams }) => (total === null || grams === null ? null : addRanges(total, grams)),
    { low: ZERO, high: ZERO },
  );
}

const atLeastNought = (value: Rational): Rational => (compare(value, ZERO) < 0 ? ZERO : value);

/** What is left of a range when so much is taken from both of its ends. */
export const lessened = ({ low, high }: Range, by: Rational): Range => ({
  low: atLeastNought(sub(low, by)),
  high: atLeastNought(sub(high, by)),
});

/** What is still wanted, and what is still at hand. */
export interface Rest {
  readonly wanted: readonly Parcel[];
  /** null: all of it is reckoned with. */
  readonly atHand: Parcel | null;
  /** `unlike`: it cannot be compared with anything that is wanted. `idle`: nothing was wanted any more. */
  readonly gave: "some" | "unlike" | "idle";
}

/**
 * Takes what is at hand off what is wanted: what measures the same way first, then by weight. Only the lower end of
 * what is at hand counts, for nothing may be missing when cooking begins.
 */
export function takeOff(wanted: readonly Parcel[], atHand: Parcel): Rest {
  let left: Parcel | null = atHand;
  let gave: Rest["gave"] = wanted.length === 0 ? "idle" : "unlike";
  const rest: Parcel[] = [];
  for (const parcel of wanted.toSorted((a, b) => Number(isAlike(b, atHand)) - Number(isAlike(a, atHand)))) {
    const taken: Taken | null = left === null ? null : takenBy(parcel, left);
    rest.push(taken?.wanted ?? parcel);
    if (taken === null) continue;
    gave = "some";
    left = taken.left;
  }
  return { wanted: rest.filter(isThere), atHand: left, gave };
}

const isThere = ({ amount }: Parcel): boolean => compare(rational(amount.high), ZERO) > 0;

const isAlike = (a: Parcel, b: Parcel): boolean => familyOf(a.amount.unit) === familyOf(b.amount.unit);

interface Taken {
  readonly wanted: Parcel;
  readonly left: Parcel | null;
}

/** null: the two cannot be compared. */
function takenBy(parcel: Parcel, hand: Parcel): Taken | null {
  if (isAlike(parcel, hand)) {
    const same = convert(hand.amount, parcel.amount.unit);
    if (!same.ok) throw new Error(`${hand.amount.unit} and ${parcel.amount.unit} are not alike`);
    return split(parcel, hand, rational(parcel.amount.high), rational(same.value.low));
  }
  if (parcel.grams === null || hand.grams === null || parcel.grams.high === ZERO) return null;
  return split(parcel, hand, parcel.grams.high, hand.grams.low);
}

/** @param need of the parcel at most, and @param has of what is at hand at least, both in one measure */
function split(parcel: Parcel, hand: Parcel, need: Rational, has: Rational): Taken {
  if (compare(has, need) < 0) return { wanted: lessenedParcel(parcel, div(has, need)), left: null };
  const over = div(sub(has, need), has);
  return { wanted: lessenedParcel(parcel, ONE), left: over === ZERO ? null : scaled(hand, over) };
}

/** What remains of a parcel when a share (0 to 1) of its upper end is taken away. */
function lessenedParcel({ amount, grams }: Parcel, share: Rational): Parcel {
  const left = lessened(rangeOf(amount), mul(rational(amount.high), share));
  return {
    amount: measured(left.low, amount.unit, left.high),
    grams: grams === null ? null : lessened(grams, mul(grams.high, share)),
  };
}

/** So many times a parcel. */
export function scaled({ amount, grams }: Parcel, by: Rational): Parcel {
  const { low, high } = scaleRange(rangeOf(amount), by);
  return { amount: measured(low, amount.unit, high), grams: grams === null ? null : scaleRange(grams, by) };
}
