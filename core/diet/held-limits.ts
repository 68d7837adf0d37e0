import type { Nutrient } from "../food/nutrients.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type { Diet, ValueRule } from "./diet.ts";
import type { Finding } from "./findings.ts";
import type { FoodBook } from "./food-book.ts";
import { valueRuleWords } from "./rule-words.ts";
import { valueFindings } from "./value-limits.ts";

/** What limits are held against. */
export interface Held {
  readonly meal: CookingMeal;
  readonly diets: readonly Diet[];
  readonly book: FoodBook;
}

/** One limit of a diet, held against a dish, the meal or the day. */
export interface HeldLimit {
  readonly nutrient: Nutrient;
  readonly scope: ValueRule["in"];
  /** Of a serving, whose: the dish's name; else null. */
  readonly dish: string | null;
  /** "Lamp Room Diet, sodium at most 140 mg in a serving". */
  readonly limit: string;
  /** "open": so much is wanted in a day, and the day is not over. */
  readonly state: "kept" | "broken" | "cannot tell" | "open";
  /** What is against it, a sentence each. */
  readonly why: readonly string[];
}

/** The value that a limit is about. */
export const limitedBy = (rule: ValueRule): Nutrient =>
  rule.kind === "claim" ? rule.claim.nutrient : rule.nutrient;

function holdRule(
  rule: ValueRule,
  diet: Diet,
  { meal, book }: Held,
  findings: readonly Finding[],
): readonly HeldLimit[] {
  const { in: scope } = rule;
  const limit = `${diet.name}, ${valueRuleWords(rule).replace(": ", " ")}`;
  const plain = { nutrient: limitedBy(rule), scope, limit };
  if (!book.eaten.ok && scope === "day")
    return [{ ...plain, dish: null, state: "cannot tell", why: [book.eaten.error] }];
  const found = findings.filter((one) => one.rule === valueRuleWords(rule));
  const whose = scope === "serving" ? meal.dishes.map(({ name }) => name) : [null];
  // "At least so much in a day" nobody can have missed yet.
  const fine = rule.kind === "at least" && scope === "day" ? "open" : "kept";
  return whose.map((dish): HeldLimit => {
    const against = found.filter((one) => one.dish === dish);
    const isBroken = against.some(({ verdict }) => verdict === "not allowed");
    const state = against.length === 0 ? fine : isBroken ? "broken" : "cannot tell";
    return { ...plain, dish, state, why: against.map(({ why }) => why) };
  });
}

/** All of a diet's limits at once: adding a meal up is what takes the time. */
function holdDiet(diet: Diet, held: Held, isWanted: (rule: ValueRule) => boolean): readonly HeldLimit[] {
  const values = diet.values.filter(isWanted);
  const eaten = held.book.eaten.ok ? held.book.eaten.value : [];
  const findings = valueFindings(held.meal, { ...diet, values }, held.book.larder, eaten);
  return values.flatMap((rule) => holdRule(rule, diet, held, findings));
}

/** Every limit of the diets that hold, with whether it is kept. @param isWanted which of them; all by default */
export const heldLimits = (
  held: Held,
  isWanted: (rule: ValueRule) => boolean = () => true,
): readonly HeldLimit[] => held.diets.flatMap((diet) => holdDiet(diet, held, isWanted));
