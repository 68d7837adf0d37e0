import type { CookingMeal, Dish, Ingredient } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import { compare, ONE } from "../units/rational.ts";
import { countedIn, mayAgain, mealsHad, shareOver, type Asked, type Much, type Times } from "./counting.ts";
import type { Diet } from "./diet.ts";
import { within, type EatenMeal } from "./eaten.ts";
import { percentWords } from "./figures.ts";
import type { Finding } from "./findings.ts";
import type { Larder } from "./groups.ts";
import { allowanceWords, foodRuleWords } from "./rule-words.ts";

function finding(
  { rule, diet }: Asked,
  told: Pick<Finding, "dish" | "ingredient" | "verdict" | "why" | "howMuch" | "mend">,
): Finding {
  return { diet: diet.name, rule: foodRuleWords(rule), because: rule.because, standIns: null, ...told };
}

const namesOf = (ingredients: readonly Ingredient[]): string =>
  listed([...new Set(ingredients.map(({ item }) => item))]);

function overTimes(
  meal: CookingMeal,
  eaten: readonly EatenMeal[],
  asked: Asked,
  allowance: Times,
): readonly Finding[] {
  const here = countedIn(meal.dishes, asked);
  if (here.length === 0) return [];
  const { ago, unsure } = mealsHad(eaten, allowance.every, asked);
  if (ago.length + unsure < allowance.times) return [];
  const isSure = ago.length >= allowance.times;
  const { said } = asked.rule.name;
  const meals = ago.length === 1 ? "one meal" : `${ago.length} meals`;
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
      howMuch: `${ago.length + 1} times with this meal`,
      mend: isSure ? mayAgain(ago, allowance) : null,
    }),
  ];
}

function overMuch(
  dishes: readonly Dish[],
  before: readonly EatenMeal[],
  asked: Asked,
  much: Much,
): readonly Finding[] {
  const here = countedIn(dishes, asked);
  if (here.length === 0) return [];
  const share = shareOver([...before.map(({ dishes: eaten }) => eaten), dishes], asked, much);
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
