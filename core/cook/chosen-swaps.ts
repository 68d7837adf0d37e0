import type { CookingMeal } from "../recipe/model.ts";
import { err, ok, type Result } from "../units/result.ts";
import { mealWithSwap } from "./swap.ts";
import type { UsedSwap } from "./used-swap.ts";

/** What is to be taken for an ingredient of a meal that is not begun, by name: the list of swaps may be another by then. */
export interface SwapChoice {
  readonly dish: string;
  readonly ingredient: string;
  /** As the swap names it: "lemon juice". */
  readonly use: string;
}

function swapChosen({ dishes }: CookingMeal, choice: SwapChoice): UsedSwap | null {
  const dish = dishes.find(({ id }) => id === choice.dish);
  const ingredient = dish?.ingredients.find(({ id }) => id === choice.ingredient);
  const swap = ingredient?.swaps.findIndex(({ use }) => use === choice.use) ?? -1;
  return dish === undefined || ingredient === undefined || swap < 0
    ? null
    : { dish: dish.id, ingredient: ingredient.id, swap };
}

/**
 * The swaps that were chosen for a meal, one for an ingredient.
 * Error: one sentence about the first that the meal does not offer any more.
 */
export function swapsChosen(
  meal: CookingMeal,
  choices: readonly SwapChoice[],
): Result<readonly UsedSwap[], string> {
  const used: UsedSwap[] = [];
  for (const choice of choices) {
    const swap = swapChosen(meal, choice);
    if (swap === null)
      return err(`${meal.name} offers no ${choice.use} any more; look at it again and choose anew.`);
    if (used.some(({ dish, ingredient }) => dish === swap.dish && ingredient === swap.ingredient))
      return err(`Two things are to be taken for one in ${meal.name}; choose one of them.`);
    used.push(swap);
  }
  return ok(used);
}

/** The meal with the swaps that were chosen for it. Error: as of `swapsChosen`. */
export function withChosenSwaps(
  meal: CookingMeal,
  choices: readonly SwapChoice[],
): Result<CookingMeal, string> {
  const used = swapsChosen(meal, choices);
  return used.ok ? ok(used.value.reduce(mealWithSwap, meal)) : used;
}
