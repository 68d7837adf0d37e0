import type { CookingMeal, Dish, Ingredient } from "../recipe/model.ts";
import { spokenIngredient } from "../food/ingredient-words.ts";
import { allowanceFindings } from "./allowances.ts";
import { contradictions } from "./contradictions.ts";
import type { Diet } from "./diet.ts";
import type { EatenMeal } from "./eaten.ts";
import { strictest, type Finding, type Verdict } from "./findings.ts";
import type { Larder } from "./groups.ts";
import { judgeFood } from "./judge-food.ts";
import { kindOf } from "./kind.ts";
import { allowedSwaps, mendFor, standIn } from "./mend.ts";
import { foodNotes } from "./notes.ts";
import { stepFindings } from "./step-foods.ts";
import { valueFindings } from "./value-limits.ts";
import { capital } from "../units/capital.ts";

/** The answer for one ingredient, how much and how often of it there is left aside. */
export interface IngredientAnswer {
  readonly dish: string;
  readonly ingredient: string;
  readonly verdict: Verdict;
}

/** What the diets say of a meal. */
export interface MealCheck {
  readonly meal: CookingMeal;
  readonly diets: readonly Diet[];
  /** The strictest answer of all. */
  readonly verdict: Verdict;
  /** What is not allowed first. */
  readonly findings: readonly Finding[];
  readonly ingredients: readonly IngredientAnswer[];
  /** What holds without any diet: cautions that concern medicines and minerals, a sentence each. */
  readonly notes: readonly string[];
}

function foodFindings(
  dish: Dish,
  ingredient: Ingredient,
  diets: readonly Diet[],
  larder: Larder,
): readonly Finding[] {
  const kind = kindOf(ingredient, larder);
  const judged = diets.flatMap((diet) =>
    judgeFood(kind, diet, larder).map((judgement) => ({ diet, judgement })),
  );
  // Most ingredients have nothing against them, and then nobody asks what may stand in.
  if (judged.length === 0) return [];
  const swaps = allowedSwaps(ingredient, diets, larder);
  const foods = swaps.map((swap) => standIn(swap, ingredient));
  const standIns = foods.length === 0 ? null : { dish: dish.id, ingredient: ingredient.id, foods };
  return judged.map(({ diet, judgement }): Finding => {
    const { rule, verdict, why, because } = judgement;
    return {
      diet: diet.name,
      rule,
      dish: dish.name,
      ingredient: ingredient.item,
      verdict,
      why,
      howMuch: spokenIngredient(ingredient.amount, ingredient.item),
      because,
      mend: mendFor(ingredient, judgement, kind, swaps),
      standIns,
    };
  });
}

function clashFindings(diets: readonly Diet[]): readonly Finding[] {
  return contradictions(diets).map((why) => ({
    diet: diets.map(({ name }) => name).join(", "),
    rule: "diets that hold at once",
    dish: null,
    ingredient: null,
    verdict: "cannot tell",
    why,
    howMuch: null,
    because: null,
    mend: null,
    standIns: null,
  }));
}

const eachIngredient = <T>(
  meal: CookingMeal,
  tell: (dish: Dish, ingredient: Ingredient) => T,
): readonly T[] =>
  meal.dishes.flatMap((dish) => dish.ingredients.map((ingredient) => tell(dish, ingredient)));

/**
 * Holds a meal against every diet that applies: each ingredient by its food and the groups it is of or made with, how
 * much and how often of it, and what the dishes, the meal and the day hold. What nobody can tell is no yes.
 * It is no medical advice: the diets are what the cook wrote down.
 * @param eaten the meals of the last days by the log, without this one
 */
export function checkMeal(
  meal: CookingMeal,
  diets: readonly Diet[],
  larder: Larder,
  eaten: readonly EatenMeal[],
): MealCheck {
  const foods = eachIngredient(meal, (dish, ingredient) => ({
    dish: dish.name,
    ingredient: ingredient.item,
    findings: foodFindings(dish, ingredient, diets, larder),
  }));
  const all: readonly Finding[] = [
    ...clashFindings(diets),
    ...foods.flatMap(({ findings }) => findings),
    ...meal.dishes.flatMap((dish) => stepFindings(dish, diets, larder)),
    ...diets.flatMap((diet) => [
      ...allowanceFindings(meal, diet, larder, eaten),
      ...valueFindings(meal, diet, larder, eaten),
    ]),
  ].map((one) => ({ ...one, why: capital(one.why) }));
  const of = (verdict: Verdict): readonly Finding[] => all.filter((one) => one.verdict === verdict);
  return {
    meal,
    diets,
    verdict: strictest(all.map(({ verdict }) => verdict)),
    findings: [...of("not allowed"), ...of("cannot tell")],
    ingredients: foods.map(({ dish, ingredient, findings }) => {
      return { dish, ingredient, verdict: strictest(findings.map(({ verdict }) => verdict)) };
    }),
    notes: foodNotes(meal, larder),
  };
}
