import { SIZES, type Food, type Size } from "../food/food.ts";
import { normaliseFood } from "../food/names.ts";
import type { Ingredient } from "../recipe/model.ts";
import { shortAmount } from "../units/amount-words.ts";
import {
  abs,
  compare,
  div,
  mixed,
  mul,
  ratio,
  rational,
  sub,
  toNumber,
  type Rational,
} from "../units/rational.ts";

const isWhole = (value: Rational): boolean => value.endsWith("/1");

/** Whether an ingredient is eggs that are counted; an eggplant is none. */
export const isEggs = ({ item, amount }: Ingredient): boolean =>
  amount.kind === "measured" && amount.unit === "piece" && normaliseFood(item).split(" ").at(-1) === "egg";

/** Whether whole eggs do not come out even. */
export const splitsEggs = (ingredient: Ingredient): boolean => {
  const { amount } = ingredient;
  return (
    isEggs(ingredient) &&
    amount.kind === "measured" &&
    !(isWhole(rational(amount.low)) && isWhole(rational(amount.high)))
  );
};

const sizeSaid = (item: string): Size => SIZES.find((size) => item.toLowerCase().includes(size)) ?? "large";

interface Choice {
  readonly count: bigint;
  readonly size: Size;
  readonly off: Rational;
}

function nearest(exact: Rational, grams: Rational, weighs: ReadonlyMap<Size, Rational>): Choice | null {
  const { whole } = mixed(exact);
  const counts = [whole, whole + 1n].filter((count) => count > 0n);
  const choices = counts.flatMap((count) =>
    [...weighs].map(([size, one]): Choice => ({ count, size, off: abs(sub(mul(ratio(count), one), grams)) })),
  );
  return choices.toSorted((a, b) => compare(a.off, b.off))[0] ?? null;
}

/**
 * Eggs that do not come out even, as a cook can measure them: "3 medium, or 135 g beaten". The exact number is kept
 * elsewhere. Null where they come out even, or the table does not tell what eggs of each size weigh.
 */
export function eggWords(ingredient: Ingredient, food: Food | null): string | null {
  const { amount, item } = ingredient;
  if (!splitsEggs(ingredient) || amount.kind !== "measured" || amount.low !== amount.high || food === null)
    return null;
  const weighs = new Map(
    food.measures.flatMap(({ unit, size, grams, count }): [Size, Rational][] =>
      unit === "piece" && size !== null ? [[size, div(grams, count)]] : [],
    ),
  );
  const own = weighs.get(sizeSaid(item));
  if (own === undefined) return null;
  const exact = rational(amount.low);
  const grams = mul(exact, own);
  const choice = nearest(exact, grams, weighs);
  if (choice === null) return null;
  const beaten = shortAmount({ kind: "measured", low: grams, high: grams, unit: "g" });
  return `${String(choice.count)} ${choice.size}, or ${beaten} beaten`;
}

/** How many eggs, to two places: for saying that they do not come out even. */
export const eggFigure = (value: Rational): string => String(Math.round(toNumber(value) * 100) / 100);
