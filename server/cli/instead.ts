import { withChosenSwaps, type SwapChoice } from "../../core/cook/chosen-swaps.ts";
import { normaliseFood } from "../../core/food/names.ts";
import type { CookingMeal, Ingredient } from "../../core/recipe/model.ts";
import { listed } from "../../core/recipe/nearest.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

/** How the option is told in a command's help. */
export const insteadHelp = "take one thing for another wherever it goes in, as the recipe or check offers it";

/** One thing that is taken for another. */
export interface Instead {
  /** As in the recipe: "chili powder". */
  readonly item: string;
  readonly use: string;
}

/** Reads "chili powder=paprika". Error: one sentence. */
export function readInstead(words: readonly string[] = []): Result<readonly Instead[], string> {
  const all: Instead[] = [];
  for (const word of words) {
    const [, item = "", use = ""] = /^([^=]+)=([^=]+)$/.exec(word) ?? [];
    if (item.trim() === "" || use.trim() === "")
      return err('--instead takes two foods, for instance: --instead "chili powder=paprika"');
    all.push({ item: item.trim(), use: use.trim() });
  }
  return ok(all);
}

const isCalled = (name: string, said: string): boolean => normaliseFood(name) === normaliseFood(said);

const isTaken = ({ item }: Instead, ingredient: Ingredient): boolean => isCalled(ingredient.item, item);

/** Where in a meal it can be done. */
const choicesIn = (meal: CookingMeal, wanted: Instead): readonly SwapChoice[] =>
  meal.dishes.flatMap((dish) =>
    dish.ingredients.flatMap((ingredient) => {
      const swap = ingredient.swaps.find(({ use }) => isCalled(use, wanted.use));
      return swap === undefined || !isTaken(wanted, ingredient)
        ? []
        : [{ dish: dish.id, ingredient: ingredient.id, use: swap.use }];
    }),
  );

function whyNot(meals: readonly CookingMeal[], wanted: Instead): string {
  const there = meals
    .flatMap(({ dishes }) => dishes)
    .flatMap(({ ingredients }) => ingredients)
    .filter((ingredient) => isTaken(wanted, ingredient));
  if (there.length === 0) return `Nothing that you cook has ${wanted.item} in it.`;
  const uses = [...new Set(there.flatMap(({ swaps }) => swaps.map(({ use }) => use)))];
  const offered = uses.length === 0 ? "Nothing is known that may stand in." : `There is: ${listed(uses)}.`;
  return `Nobody offers ${wanted.use} instead of ${wanted.item}. ${offered}`;
}

/**
 * The meals with what is to be taken for what, wherever it goes in and is offered.
 * Error: one sentence with what is offered instead.
 */
export function takingInstead(
  meals: readonly CookingMeal[],
  wanted: readonly Instead[],
): Result<readonly CookingMeal[], string> {
  const lost = wanted.find((one) => meals.every((meal) => choicesIn(meal, one).length === 0));
  if (lost !== undefined) return err(whyNot(meals, lost));
  const taken: CookingMeal[] = [];
  for (const meal of meals) {
    const made = withChosenSwaps(
      meal,
      wanted.flatMap((one) => choicesIn(meal, one)),
    );
    if (!made.ok) return made;
    taken.push(made.value);
  }
  return ok(taken);
}

/** The same for one meal. */
export function mealTaking(meal: CookingMeal, wanted: readonly Instead[]): Result<CookingMeal, string> {
  const taken = takingInstead([meal], wanted);
  return taken.ok ? ok(taken.value[0] ?? meal) : taken;
}
