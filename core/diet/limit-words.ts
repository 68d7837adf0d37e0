import type { Nutrient } from "../food/nutrients.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type { Diet, ValueRule } from "./diet.ts";
import type { FoodBook } from "./food-book.ts";
import { valueRuleWords } from "./rule-words.ts";
import { valueFindings } from "./value-limits.ts";

/** Where a limit is looked for. @param dish of a serving, whose */
export interface Where {
  readonly scope: ValueRule["in"];
  readonly dish: string | null;
}

/** What a limit is held against. */
interface Held {
  readonly meal: CookingMeal;
  readonly diets: readonly Diet[];
  readonly book: FoodBook;
}

const isAbout = (rule: ValueRule, nutrient: Nutrient): boolean =>
  (rule.kind === "claim" ? rule.claim.nutrient : rule.nutrient) === nutrient;

function oneDiet(
  diet: Diet,
  nutrient: Nutrient,
  { scope, dish }: Where,
  { meal, book }: Held,
): readonly string[] {
  const rules = diet.values.filter((rule) => rule.in === scope && isAbout(rule, nutrient));
  if (rules.length === 0) return [];
  if (!book.eaten.ok && scope === "day") return [book.eaten.error];
  const eaten = book.eaten.ok ? book.eaten.value : [];
  return rules.flatMap((rule) => {
    const found = valueFindings(meal, { ...diet, values: [rule] }, book.larder, eaten);
    const against = found.filter((one) => one.dish === dish).map(({ why }) => why);
    // "At least so much in a day" nobody can have missed yet.
    if (against.length > 0) return against;
    const limit = `${diet.name}, ${valueRuleWords(rule).replace(": ", " ")}`;
    return [rule.kind === "at least" && scope === "day" ? `${limit}.` : `That keeps to ${limit}.`];
  });
}

/** What the diets that hold say to how much of a value there is, a sentence for each limit. */
export const limitWords = (nutrient: Nutrient, where: Where, held: Held): readonly string[] =>
  held.diets.flatMap((diet) => oneDiet(diet, nutrient, where, held));
