import type { Dish, Ingredient } from "../recipe/model.ts";
import { compare, div, ratio, type Rational } from "../units/rational.ts";
import { boundsOf, type Bounds, type Food } from "./food.ts";
import type { Nutrient } from "./nutrients.ts";
import { bringsOf, type Counted, type DishValues, type NotCounted, type Total } from "./values.ts";
import type { Weight } from "./weigh.ts";

/** What one ingredient brings of a value, and how that is known. */
export type ValuePart =
  | {
      readonly kind: "known";
      readonly ingredient: Ingredient;
      readonly food: Food;
      readonly weight: Weight;
      /** Of the food without refuse. */
      readonly in100g: Bounds;
      readonly inAll: Bounds;
      readonly aServing: Bounds;
    }
  /** It is not nought. `why` is one sentence. */
  | {
      readonly kind: "unknown";
      readonly ingredient: Ingredient;
      readonly food: Food | null;
      readonly weight: Weight | null;
      readonly why: string;
    };

/** Where a value of a dish comes from. */
export interface ValueParts {
  readonly nutrient: Nutrient;
  readonly dish: Dish;
  /** What brings the most first, what nobody knows last. */
  readonly parts: readonly ValuePart[];
  readonly notCounted: readonly NotCounted[];
  readonly inAll: Total;
  readonly aServing: Total;
}

/** Why there is no figure for a food that is known. */
function withoutFigure({ ndb, label }: Food): string {
  const isOneOf =
    [ndb, label].some((from) => from?.includes(" or ") === true) || (ndb !== null && label !== null);
  if (isOneOf) return "One of the foods that it may be has no figure for it.";
  return label === null ? "The table of foods has no figure for it." : "The label does not tell it.";
}

function partOf(counted: Counted, nutrient: Nutrient, servings: Rational): ValuePart {
  const { ingredient, food } = counted;
  if (counted.kind === "unknown")
    return { kind: "unknown", ingredient, food, weight: null, why: counted.why };
  const { weight } = counted;
  const [in100g, inAll] = [boundsOf(counted.food, nutrient), bringsOf(counted, nutrient)];
  if (in100g === null || inAll === null)
    return { kind: "unknown", ingredient, food, weight, why: withoutFigure(counted.food) };
  const aServing = { low: div(inAll.low, servings), high: div(inAll.high, servings) };
  return { kind: "known", ingredient, food: counted.food, weight, in100g, inAll, aServing };
}

function theMostFirst(a: ValuePart, b: ValuePart): number {
  if (a.kind === "known" && b.kind === "known") return compare(b.inAll.high, a.inAll.high);
  return a.kind === b.kind ? 0 : a.kind === "known" ? -1 : 1;
}

/** What each ingredient brings of a value of a dish: the parts that add up to its total, with the food behind each. */
export function valueParts(nutrient: Nutrient, values: DishValues): ValueParts {
  const { dish, counted, notCounted, inAll, aServing } = values;
  const servings = ratio(dish.yield.servings);
  return {
    nutrient,
    dish,
    parts: counted.map((one) => partOf(one, nutrient, servings)).toSorted(theMostFirst),
    notCounted,
    inAll: inAll[nutrient],
    aServing: aServing[nutrient],
  };
}
