import { knownIngredient } from "../food/ingredient-food.ts";
import { weigh } from "../food/weigh.ts";
import type { CookingMeal, Dish, Ingredient } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import { add, compare, div, ONE, ratio, ZERO, type Rational } from "../units/rational.ts";
import type { Allowance, Diet, FoodRule } from "./diet.ts";
import { DAYS, within, type EatenMeal } from "./eaten.ts";
import type { Finding } from "./findings.ts";
import type { Larder } from "./groups.ts";
import { bearings } from "./judge-food.ts";
import { kindOf } from "./kind.ts";
import { allowanceWords, foodRuleWords } from "./rule-words.ts";
import { percentWords } from "./figures.ts";

type Much = Extract<Allowance, { kind: "amount" }>;
type Times = Extract<Allowance, { kind: "times" }>;

/** A rule with its diet and what is known of foods. */
interface Asked {
  readonly rule: FoodRule;
  readonly diet: Diet;
  readonly larder: Larder;
}

/** Whether an ingredient counts towards a rule; null: nobody can tell. */
function counts(ingredient: Ingredient, { rule, diet, larder }: Asked): boolean | null {
  const bearing = bearings(kindOf(ingredient, larder), diet, larder).find((one) => one.rule === rule);
  if (bearing?.part === "is") return true;
  return bearing?.part === "unknown" ? null : false;
}

const countedIn = (dishes: readonly Dish[], asked: Asked): readonly Ingredient[] =>
  dishes.flatMap(({ ingredients }) => ingredients).filter((one) => counts(one, asked) === true);

function finding(
  { rule, diet }: Asked,
  told: Pick<Finding, "dish" | "ingredient" | "verdict" | "why" | "howMuch" | "mend">,
): Finding {
  return { diet: diet.name, rule: foodRuleWords(rule), because: rule.because, ...told };
}

const namesOf = (ingredients: readonly Ingredient[]): string =>
  listed([...new Set(ingredients.map(({ item }) => item))]);

const days = (count: number): string => (count === 1 ? "tomorrow" : `in ${count} days`);

/** When enough meals have gone out of the week. @param ago of each meal that counts, in days */
function mayAgain(ago: readonly number[], { times, every }: Times): string {
  const newestFirst = ago.toSorted((a, b) => a - b);
  const last = newestFirst[times - 1] ?? 0;
  return `It may be had again ${days(DAYS[every] - last)}.`;
}

function overTimes(
  meal: CookingMeal,
  eaten: readonly EatenMeal[],
  asked: Asked,
  allowance: Times,
): readonly Finding[] {
  const here = countedIn(meal.dishes, asked);
  if (here.length === 0) return [];
  const before = within(eaten, allowance.every);
  const sure = before.filter(({ dishes }) => countedIn(dishes, asked).length > 0);
  const unsure = before.filter(
    ({ dishes }) =>
      countedIn(dishes, asked).length === 0 &&
      dishes.some(({ ingredients }) => ingredients.some((one) => counts(one, asked) === null)),
  );
  if (sure.length + unsure.length < allowance.times) return [];
  const isSure = sure.length >= allowance.times;
  const { said } = asked.rule.name;
  const meals = sure.length === 1 ? "one meal" : `${sure.length} meals`;
  const had = `${meals} of this ${allowance.every} had ${said} already, by the meal log`;
  const why = isSure
    ? `${namesOf(here)} counts as ${said}: ${had}.`
    : `I cannot tell how often ${said} was eaten this ${allowance.every}: a food in the log is not known.`;
  return [
    finding(asked, {
      dish: null,
      ingredient: namesOf(here),
      verdict: isSure ? "not allowed" : "cannot tell",
      why,
      howMuch: `${sure.length + 1} times with this meal`,
      mend: isSure
        ? mayAgain(
            sure.map(({ daysAgo }) => daysAgo),
            allowance,
          )
        : null,
    }),
  ];
}

/** How much of an allowance is used up; 1 is all of it. */
interface Share {
  readonly low: Rational;
  readonly high: Rational;
  readonly unknown: readonly string[];
}

const NONE: Share = { low: ZERO, high: ZERO, unknown: [] };

const together = (a: Share, b: Share): Share => ({
  low: add(a.low, b.low),
  high: add(a.high, b.high),
  unknown: [...a.unknown, ...b.unknown],
});

function shareOf(ingredient: Ingredient, servings: number, { larder }: Asked, much: Much): Share {
  const known = knownIngredient(larder.foods, ingredient);
  const unknown: Share = { ...NONE, unknown: [ingredient.item] };
  if (!known.ok || ingredient.amount.kind === "to-taste") return unknown;
  const { food, weight: is } = known.value;
  // What a diet allows is what is eaten, without peel and stones.
  const may = weigh(food, much.amount, food.name, "edible weight");
  if (!is.ok || !may.ok) return unknown;
  const one = ratio(servings);
  const low = ingredient.optional ? ZERO : div(div(is.value.low, may.value.high), one);
  return { low, high: div(div(is.value.high, may.value.low), one), unknown: [] };
}

const shareIn = (dishes: readonly Dish[], asked: Asked, much: Much): Share =>
  dishes
    .flatMap((dish) => countedIn([dish], asked).map((one) => shareOf(one, dish.yield.servings, asked, much)))
    .reduce(together, NONE);

function overMuch(
  dishes: readonly Dish[],
  before: readonly EatenMeal[],
  asked: Asked,
  much: Much,
): readonly Finding[] {
  const here = countedIn(dishes, asked);
  if (here.length === 0) return [];
  const share = [
    ...before.map(({ dishes: eaten }) => shareIn(eaten, asked, much)),
    shareIn(dishes, asked, much),
  ].reduce(together, NONE);
  const isOver = compare(share.low, ONE) > 0;
  if (!isOver && compare(share.high, ONE) <= 0 && share.unknown.length === 0) return [];
  const { said } = asked.rule.name;
  const part = `${percentWords(share.low, share.high)} of what is allowed, ${allowanceWords(much)}`;
  const lost =
    share.unknown.length === 0 ? "" : `: what ${listed([...new Set(share.unknown)])} weighs is not known`;
  const earlier = before.length === 0 ? "" : " with what the log has";
  return [
    finding(asked, {
      dish: much.every === "serving" ? (dishes[0]?.name ?? null) : null,
      ingredient: namesOf(here),
      verdict: isOver ? "not allowed" : "cannot tell",
      why: isOver
        ? `A serving has ${part}, of ${said}${earlier}.`
        : `I cannot tell whether a serving has too much of ${said}${lost}.`,
      howMuch: share.unknown.length === 0 ? part : null,
      mend: isOver ? `Use less of ${namesOf(here)}, or make more servings of it.` : null,
    }),
  ];
}

function overAllowance(meal: CookingMeal, eaten: readonly EatenMeal[], asked: Asked): readonly Finding[] {
  const { allowance } = asked.rule;
  if (allowance === null) return [];
  if (allowance.kind === "times") return overTimes(meal, eaten, asked, allowance);
  if (allowance.every === "serving")
    return meal.dishes.flatMap((dish) => overMuch([dish], [], asked, allowance));
  return overMuch(meal.dishes, within(eaten, allowance.every), asked, allowance);
}

/** Where a meal goes beyond how much or how often a diet allows of a food, with what was eaten before it. */
export const allowanceFindings = (
  meal: CookingMeal,
  diet: Diet,
  larder: Larder,
  eaten: readonly EatenMeal[],
): readonly Finding[] => diet.foods.flatMap((rule) => overAllowance(meal, eaten, { rule, diet, larder }));
