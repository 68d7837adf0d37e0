import { formatAmount } from "../units/amount.ts";
import { compare, ratio, type Rational } from "../units/rational.ts";
import { endsWords, figureWords, rounded } from "./figures.ts";
import type { Bounds, Food } from "./food.ts";
import { nutrientWords, type Nutrient } from "./nutrients.ts";
import type { ValuePart } from "./value-parts.ts";
import type { NotCounted } from "./values.ts";

/** What an ingredient brings of a value, as it is printed and shown. */
export interface PartWords {
  readonly item: string;
  /** "1 1/2 cups". */
  readonly amount: string;
  /** The food that it was taken for, by its name in the table or on the label; null: none. */
  readonly food: string | null;
  /** "SR28 number 16144", "your label labels/plain-oat-drink.yaml"; null: from nowhere. */
  readonly from: string | null;
  /** "288 g", without refuse; null: not known. */
  readonly weighs: string | null;
  /** "6 mg"; null: not known. */
  readonly in100g: string | null;
  /** "17.3 mg", or "unknown". */
  readonly inAll: string;
  readonly aServing: string;
  /** What was taken for granted, or why nothing is known, a sentence each. */
  readonly notes: readonly string[];
}

const ONE = ratio(1);

/** A pinch weighs less than a tenth of a gram, and still something. */
const grams = (value: Rational): string => rounded(value, compare(value, ONE) < 0 ? 2 : 1);

/** As the table has it, SR28 prints three decimals at most; what a label says of a serving is no finer than that. */
const in100gWords = (nutrient: Nutrient, { low, high }: Bounds, { label }: Food): string =>
  label === null
    ? `${endsWords(rounded(low, 3), rounded(high, 3))} ${nutrientWords(nutrient).unit}`
    : figureWords(nutrient, low, high);

/** Where a food's figures are from; null where they are from nowhere. */
export function sourceWords({ ndb, label }: Pick<Food, "ndb" | "label">): string | null {
  const places = [
    ...(ndb === null ? [] : [`SR28 number ${ndb}`]),
    ...(label === null ? [] : [`your label ${label}`]),
  ];
  return places.length === 0 ? null : places.join(" or ");
}

function notesOf(part: ValuePart): readonly string[] {
  const { assumed: size, note } = part.weight ?? { assumed: null, note: null };
  return [
    ...(part.kind === "unknown" ? [part.why] : []),
    ...(size === null ? [] : [`The recipe names no size, so a ${size} one was taken.`]),
    ...(note === null ? [] : [note]),
  ];
}

/** An ingredient's part in words. */
export function partWords(nutrient: Nutrient, part: ValuePart): PartWords {
  const { ingredient, food, weight } = part;
  const isKnown = part.kind === "known";
  const much = ({ low, high }: Bounds): string => figureWords(nutrient, low, high);
  return {
    item: ingredient.item,
    amount: formatAmount(ingredient.amount),
    food: food?.name ?? null,
    from: food === null ? null : sourceWords(food),
    weighs: weight === null ? null : `${endsWords(grams(weight.low), grams(weight.high))} g`,
    in100g: isKnown ? in100gWords(nutrient, part.in100g, part.food) : null,
    inAll: isKnown ? much(part.inAll) : "unknown",
    aServing: isKnown ? much(part.aServing) : "unknown",
    notes: notesOf(part),
  };
}

/** "Not counted: black pepper (to taste), cilantro (optional)."; null: all is counted. */
export function notCountedWords(notCounted: readonly NotCounted[]): string | null {
  if (notCounted.length === 0) return null;
  return `Not counted: ${notCounted.map(({ ingredient, why }) => `${ingredient.item} (${why})`).join(", ")}.`;
}
