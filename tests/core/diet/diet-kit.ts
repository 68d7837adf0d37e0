import { readFile } from "node:fs/promises";
import { checkMeal, type MealCheck } from "../../../core/diet/check.ts";
import { withCommonSwaps } from "../../../core/diet/common-swaps.ts";
import type { Diet } from "../../../core/diet/diet.ts";
import type { EatenMeal } from "../../../core/diet/eaten.ts";
import type { Larder } from "../../../core/diet/groups.ts";
import { readDiet } from "../../../core/diet/read-diet.ts";
import { readGroups } from "../../../core/diet/read-groups.ts";
import { readIngredientLine } from "../../../core/food/ingredient-line.ts";
import type { CookingMeal, Dish, Ingredient } from "../../../core/recipe/model.ts";
import { dishId, ingredientId, mealId } from "../../../core/recipe/model.ts";
import { shippedFoods } from "../food/shipped-foods.ts";

const { table } = await shippedFoods();
const file = new URL("../../../recipes/foods/groups.txt", import.meta.url);
/** The groups that ship, as read. */
export const shippedGroups = readGroups("groups.txt", await readFile(file, "utf8"), table);

/** The foods and groups that ship. */
export const larder: Larder = { foods: table, groups: shippedGroups.groups };

function ingredientOf(line: string, index: number): Ingredient {
  const read = readIngredientLine(line);
  if (!read.ok) throw new Error(`${line}: ${read.error}`);
  const { amount, item, preparation, optional } = read.value;
  return {
    id: ingredientId(`i${index}`),
    item: item ?? "",
    amount,
    preparation,
    food: null,
    weighs: null,
    optional,
    swaps: [],
  };
}

/** A dish of ingredient lines, four servings unless told otherwise. */
export const dishWith = (lines: readonly string[], servings = 4, name = "Pot"): Dish => ({
  id: dishId(name.toLowerCase()),
  name,
  says: [name],
  about: "",
  cautions: [],
  yield: { servings, of: "servings" },
  ingredients: lines.map(ingredientOf),
  steps: [],
});

/** A meal of dishes that is never cooked. */
export const mealOf = (...dishes: readonly Dish[]): CookingMeal => ({
  id: mealId("check-meal"),
  name: "Check Meal",
  dishes,
  kitchen: { burners: 1, ovens: [], appliances: [] },
});

const HEAD = "diet: Test Diet\nabout: Made up.\n";

/** The mistakes of a diet's text, the head left out. */
export const mistakesIn = (text: string): readonly string[] =>
  readDiet("diets/test.yaml", "test", HEAD + text, larder).mistakes.map(({ sentence }) => sentence);

/** A diet from its text, the head left out. */
export function dietOf(text: string, name = "Test Diet"): Diet {
  const head = HEAD.replace("Test Diet", name);
  const { diet, mistakes } = readDiet("diets/test.yaml", "test", head + text, larder);
  if (diet === null) throw new Error(mistakes.map(({ sentence }) => sentence).join(" "));
  return diet;
}

/** All but what is listed, with these rules for foods. */
export const butOf = (...foods: readonly string[]): Diet =>
  dietOf(`may-eat: all but what is listed\nfoods:\n${foods.map((one) => `  ${one}\n`).join("")}`);

/** Only what is listed, with these rules for foods. */
export const onlyOf = (...foods: readonly string[]): Diet =>
  dietOf(`may-eat: only what is listed\nfoods:\n${foods.map((one) => `  ${one}\n`).join("")}`);

/** All but what is listed, with these limits. */
export const limitsOf = (...limits: readonly string[]): Diet =>
  dietOf(`may-eat: all but what is listed\nlimits:\n${limits.map((one) => `  - ${one}\n`).join("")}`);

/** What a diet says of a dish of these lines, four servings, by what is known of foods. */
export const checkWith = (known: Larder, diet: Diet, lines: readonly string[]): MealCheck =>
  checkMeal(mealOf(dishWith(lines)), [diet], known, []);

/** The meal with what is plainer in its ingredients' stead, where the diet has something against them. */
export const withPlainer = (meal: CookingMeal, diet: Diet): CookingMeal =>
  withCommonSwaps(meal, { rules: [], larder, diets: [diet] });

/** What a diet says of a dish of these lines. */
export const checkOf = (
  diet: Diet,
  lines: readonly string[],
  eaten: readonly EatenMeal[] = [],
  servings = 4,
): MealCheck => checkMeal(withPlainer(mealOf(dishWith(lines, servings)), diet), [diet], larder, eaten);

/** Each finding as "verdict | ingredient | why". */
export const told = ({ findings }: MealCheck): readonly string[] =>
  findings.map(({ verdict, ingredient, why }) => `${verdict} | ${ingredient ?? "total"} | ${why}`);
