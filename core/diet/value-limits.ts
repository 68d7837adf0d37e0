import { figureWords } from "../food/figures.ts";
import { boundsOf } from "../food/food.ts";
import { knownIngredient } from "../food/ingredient-food.ts";
import type { Nutrient } from "../food/nutrients.ts";
import type { Total } from "../food/values.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import { compare, div, mul, ratio, type Rational } from "../units/rational.ts";
import type { Claim } from "./claims-table.ts";
import type { Diet, ValueRule } from "./diet.ts";
import { within, type EatenMeal } from "./eaten.ts";
import type { Finding } from "./findings.ts";
import type { Larder } from "./groups.ts";
import { valueRuleWords } from "./rule-words.ts";
import { servingTotals, sumOf, type ServingTotal } from "./totals.ts";

/** What a limit is held against, and what the limit comes to. */
interface Measured {
  readonly total: Total;
  readonly limit: { readonly nutrient: Nutrient; readonly figure: Rational; readonly bound: Claim["bound"] };
  /** "a serving of Lentil Soup". */
  readonly of: string;
}

/** What is measured, with the dishes that it is made of. */
interface Held {
  readonly of: string;
  readonly dish: string | null;
  readonly dishes: readonly Dish[];
  readonly total: ServingTotal;
}

type Answer = "kept" | "broken" | "unknown";

/** What is unknown can only add to a sum: a limit below which a sum must stay may be broken already, never surely kept. */
function answerTo({ total, limit }: Measured): Answer {
  const { low, high, unknown } = total;
  if (limit.bound === "at least") {
    if (compare(low, limit.figure) >= 0) return "kept";
    return unknown.length === 0 && compare(high, limit.figure) < 0 ? "broken" : "unknown";
  }
  const isOver = (value: Rational): boolean =>
    compare(value, limit.figure) > (limit.bound === "below" ? -1 : 0);
  if (isOver(low)) return "broken";
  return isOver(high) || unknown.length > 0 ? "unknown" : "kept";
}

const HUNDRED = ratio(100);
const FIFTY = ratio(50);
const SMALL = ratio(30);

/** In so many grams. Without the water that may boil away there is the most of it in 100 g, with all of it the least. */
function perGrams(nutrient: Nutrient, { values, weight }: ServingTotal, grams: Rational): Total {
  const { low, high, unknown } = values[nutrient];
  const isWeighed = weight.wet.unknown.length === 0 && compare(weight.dry.low, ratio(0)) > 0;
  if (!isWeighed) return { low: ratio(0), high, unknown: [...new Set([...unknown, ...weight.wet.unknown])] };
  return {
    low: mul(div(low, weight.wet.high), grams),
    high: mul(div(high, weight.dry.low), grams),
    unknown,
  };
}

function measuredBy(rule: ValueRule, { of, total }: Held): readonly Measured[] {
  if (rule.kind !== "claim") {
    const { nutrient, figure, kind } = rule;
    return [{ total: total.values[nutrient], limit: { nutrient, figure, bound: kind }, of }];
  }
  const { nutrient, figure, bound, per } = rule.claim;
  const limit = { nutrient, figure, bound };
  if (per === "100 g") return [{ total: perGrams(nutrient, total, HUNDRED), limit, of: `100 g of ${of}` }];
  const { wet } = total.weight;
  const isSmall = wet.unknown.length === 0 && compare(wet.high, SMALL) <= 0;
  const small = { total: perGrams(nutrient, total, FIFTY), limit, of: `50 g of ${of}` };
  return [{ total: total.values[nutrient], limit, of }, ...(isSmall ? [small] : [])];
}

/** The ingredient that brings the most of a value, for a cook who wants to mend it; null where none has any. */
function mostOf(nutrient: Nutrient, dishes: readonly Dish[], larder: Larder): string | null {
  const all = dishes.flatMap((dish) =>
    dish.ingredients.flatMap((ingredient) => {
      const known = knownIngredient(larder.foods, ingredient);
      const figure = known.ok ? boundsOf(known.value.food, nutrient) : null;
      if (!known.ok || figure === null || !known.value.weight.ok) return [];
      const weight = known.value.weight.value.high;
      const brings = div(mul(weight, div(figure.high, HUNDRED)), ratio(dish.yield.servings));
      return [{ item: ingredient.item, brings }];
    }),
  );
  const [first] = all.toSorted((a, b) => compare(b.brings, a.brings));
  return first === undefined || compare(first.brings, ratio(0)) === 0
    ? null
    : `Most of it comes from ${first.item}: ${figureWords(nutrient, first.brings)} in a serving.`;
}

function whyNot({ total, limit, of }: Measured, answer: Exclude<Answer, "kept">): string {
  const { nutrient, figure, bound } = limit;
  const has = `${of} has ${figureWords(nutrient, total.low, total.high)} ${nutrient}`;
  const should = { below: "must be below", "at most": "may be at most", "at least": "should be at least" }[
    bound
  ];
  const most = `it ${should} ${figureWords(nutrient, figure)}`;
  if (answer === "broken") return `${has}; ${most}.`;
  const lost = total.unknown.length === 0 ? "" : `, and for ${listed(total.unknown)} I have no figure`;
  return `As far as I know ${has}${lost}; ${most}.`;
}

function mendUnknown(unknown: readonly string[], dishes: readonly Dish[]): string {
  const all = dishes.flatMap(({ ingredients }) => ingredients);
  const names = listed(unknown);
  const mayGo = unknown.every((item) => all.some((one) => one.item === item && one.optional));
  return mayGo
    ? `Leave ${names} out; the recipe can do without.`
    : `Give ${names} a food of the table or of a label, or a weight.`;
}

function findingsFor(rule: ValueRule, held: Held, diet: Diet, larder: Larder): readonly Finding[] {
  return measuredBy(rule, held).flatMap((measured): readonly Finding[] => {
    const answer = answerTo(measured);
    if (answer === "kept") return [];
    const { nutrient, bound } = measured.limit;
    const isUnknown = answer === "unknown" && measured.total.unknown.length > 0;
    return [
      {
        diet: diet.name,
        rule: valueRuleWords(rule),
        dish: held.dish,
        ingredient: null,
        verdict: answer === "broken" ? "not allowed" : "cannot tell",
        why: whyNot(measured, answer),
        howMuch: figureWords(nutrient, measured.total.low, measured.total.high),
        because: rule.because,
        mend: isUnknown
          ? mendUnknown(measured.total.unknown, held.dishes)
          : bound === "at least"
            ? null
            : mostOf(nutrient, held.dishes, larder),
        standIns: null,
      },
    ];
  });
}

function heldOf(meal: CookingMeal, totals: readonly ServingTotal[], earlier: readonly ServingTotal[]) {
  const whole = { dish: null, dishes: meal.dishes };
  const wholeDay = earlier.length === 0 ? `a serving of ${meal.name}` : `the day with ${meal.name}`;
  return {
    serving: totals.flatMap((total, index): readonly Held[] => {
      const dish = meal.dishes[index];
      return dish === undefined
        ? []
        : [{ of: `a serving of ${dish.name}`, dish: dish.name, dishes: [dish], total }];
    }),
    meal: [{ ...whole, of: `a serving of ${meal.name}`, total: sumOf(totals) }],
    day: [{ ...whole, of: wholeDay, total: sumOf([...totals, ...earlier]) }],
  } satisfies Record<ValueRule["in"], readonly Held[]>;
}

/** Where a meal holds too much or too little of a value by a diet, with what was eaten that day. */
export function valueFindings(
  meal: CookingMeal,
  diet: Diet,
  larder: Larder,
  eaten: readonly EatenMeal[],
): readonly Finding[] {
  if (diet.values.length === 0) return [];
  const earlier = within(eaten, "day").flatMap(({ dishes }) =>
    servingTotals({ ...meal, dishes: [...dishes] }, larder.foods),
  );
  const held = heldOf(meal, servingTotals(meal, larder.foods), earlier);
  return diet.values.flatMap((rule) =>
    // What is still to be eaten today nobody knows, so a day cannot have too little yet.
    rule.in === "day" && rule.kind === "at least"
      ? []
      : held[rule.in].flatMap((one) => findingsFor(rule, one, diet, larder)),
  );
}
