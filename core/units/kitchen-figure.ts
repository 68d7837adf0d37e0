import type { Amount, Measured } from "./amount.ts";
import { convert } from "./measures.ts";
import type { Rational } from "./rational.ts";
import { ONE, ZERO, abs, add, compare, mixed, mul, ratio, rational, sub, terms } from "./rational.ts";
import type { Unit } from "./unit.ts";

/** How the exact figure lies to the one that is said; "about" is within one part in twenty. */
export type Rounding = "exact" | "about" | "a little over" | "a little under" | "less than";

/** A figure a cook can measure; `rounding` says what was done to the exact one. */
export type KitchenFigure = { readonly value: Rational; readonly rounding: Rounding };

const METRIC: ReadonlySet<Unit> = new Set(["mg", "g", "kg", "ml", "cl", "dl", "l"]);
const LARGE_METRIC: ReadonlySet<Unit> = new Set(["kg", "l", "dl"]);

/** Whether a unit is read off a scale or jug in decimals rather than filled by spoonfuls. */
export const isMetric = (unit: Unit): boolean => METRIC.has(unit);

/** Marks on ordinary cups and spoons; eighths are for less than one (common practice, no source). */
const MARKS = [ZERO, ratio(1, 4), ratio(1, 3), ratio(1, 2), ratio(2, 3), ratio(3, 4), ONE];
const FINE_MARKS = [...MARKS, ratio(1, 8), ratio(3, 8), ratio(5, 8), ratio(7, 8)];
const HALVES = [ZERO, ratio(1, 2), ONE];
const EIGHTH = ratio(1, 8);
const TWENTIETH = ratio(1, 20);

function nearest(value: Rational, marks: readonly Rational[]): Rational {
  const { whole, part } = mixed(value);
  const mark = marks.reduce((best, next) =>
    compare(abs(sub(part, next)), abs(sub(part, best))) < 0 ? next : best,
  );
  return add(ratio(whole), mark);
}

function toPlaces(value: Rational, places: number): Rational {
  const scale = 10n ** BigInt(places);
  return ratio(mixed(add(mul(value, ratio(scale)), ratio(1, 2))).whole, scale);
}

function metricFigure(value: Rational, unit: Unit): Rational {
  const isQuarter = [1n, 2n, 4n].includes(terms(value).denominator) && compare(value, ratio(10)) < 0;
  if (isQuarter) return value;
  if (LARGE_METRIC.has(unit)) return toPlaces(value, 2);
  return toPlaces(value, compare(value, ratio(10)) < 0 ? 1 : 0);
}

/** Below ten, halves to eighths are said as they are; from ten on, nobody measures finer than a half. */
function spoonFigure(value: Rational): Rational {
  const isSmall = compare(value, ratio(10)) < 0;
  if (!isSmall) return nearest(value, HALVES);
  return [1n, 2n, 3n, 4n, 8n].includes(terms(value).denominator)
    ? value
    : nearest(value, compare(value, ONE) < 0 ? FINE_MARKS : MARKS);
}

function rounding(exact: Rational, said: Rational): Rounding {
  const order = compare(exact, said);
  if (order === 0) return "exact";
  if (compare(abs(sub(exact, said)), mul(exact, TWENTIETH)) <= 0) return "about";
  return order > 0 ? "a little over" : "a little under";
}

/**
 * The nearest figure a cook can measure in this unit, never nought for something:
 * spoons and cups in halves, thirds, quarters and eighths, scales in whole grams from ten up.
 */
export function kitchenFigure(value: Rational, unit: Unit): KitchenFigure {
  const least = isMetric(unit) ? ratio(1, LARGE_METRIC.has(unit) ? 100 : 10) : EIGHTH;
  if (compare(value, ZERO) > 0 && compare(value, mul(least, ratio(3, 4))) < 0) {
    return { value: least, rounding: "less than" };
  }
  const figure = isMetric(unit) ? metricFigure(value, unit) : spoonFigure(value);
  const said = figure === ZERO && value !== ZERO ? least : figure;
  return { value: said, rounding: rounding(value, said) };
}

/** Where a unit is comfortable: from `least` up to but without `below`, with these denominators. */
type Comfort = {
  readonly unit: Unit;
  readonly least: Rational;
  readonly below: Rational;
  readonly parts: readonly bigint[];
};

const comfort = (unit: Unit, least: Rational, below: number, parts: readonly bigint[]): Comfort => ({
  unit,
  least,
  below: ratio(below),
  parts,
});

/** Units that a cook swaps among when a batch grows or shrinks (common practice, no source). */
const LADDERS: readonly (readonly Comfort[])[] = [
  [
    comfort("tsp", EIGHTH, 3, [1n, 2n, 4n, 8n]),
    comfort("tbsp", ONE, 4, [1n, 2n, 3n]),
    comfort("cup", ratio(1, 4), 16, [1n, 2n, 3n, 4n]),
    comfort("gallon", ONE, 100, [1n, 2n, 4n]),
  ],
  [comfort("g", ONE, 1000, [1n, 2n]), comfort("kg", ONE, 1000, [1n, 2n, 4n, 5n, 10n, 20n])],
  [comfort("ml", ONE, 1000, [1n, 2n]), comfort("l", ONE, 1000, [1n, 2n, 4n, 5n, 10n, 20n])],
  [comfort("oz", ratio(1, 4), 16, [1n, 2n, 4n]), comfort("lb", ONE, 100, [1n, 2n, 4n])],
];

function isComfortable(amount: Measured, step: Comfort): boolean {
  return [rational(amount.low), rational(amount.high)].every(
    (end) =>
      compare(end, step.least) >= 0 &&
      compare(end, step.below) < 0 &&
      step.parts.includes(terms(end).denominator),
  );
}

/**
 * The same amount, exactly, in the unit a cook would reach for: 12 teaspoons become a quarter cup.
 * For scaled batches; what an author wrote is left alone by not calling this.
 * Unchanged when its own unit is comfortable or no other makes an even figure.
 */
export function inKitchenUnit(amount: Amount): Amount {
  if (amount.kind === "to-taste") return amount;
  const ladder = LADDERS.find((steps) => steps.some((step) => step.unit === amount.unit));
  const own = ladder?.find((step) => step.unit === amount.unit);
  if (ladder === undefined || own === undefined || isComfortable(amount, own)) return amount;
  const moved = ladder.map((step) => convert(amount, step.unit)).flatMap((to) => (to.ok ? [to.value] : []));
  const best = moved.find((to, index) => {
    const step = ladder[index];
    return step !== undefined && isComfortable(to, step);
  });
  if (best !== undefined) return best;
  return isMeasurable(amount)
    ? amount
    : (moved.findLast((to) => to.unit !== amount.unit && isCountable(to)) ?? amount);
}

function isMeasurable(amount: Measured): boolean {
  return [amount.low, amount.high].every(
    (end) => kitchenFigure(rational(end), amount.unit).rounding === "exact",
  );
}

/** Not comfortable, yet exact and soon counted: seven tablespoons rather than a little under half a cup. */
function isCountable(amount: Measured): boolean {
  const isFew = compare(rational(amount.low), ONE) >= 0 && compare(rational(amount.high), ratio(12)) <= 0;
  return isFew && isMeasurable(amount);
}
