import type { DietName } from "../diet/diet.ts";
import type { FoodBook } from "../diet/food-book.ts";
import type { CookingMeal } from "../recipe/model.ts";
import { dishNames, foodNames, withNumbers } from "./names.ts";

const said = (name: DietName): string => name.said;

/** The foods and groups that a book's diets speak of. */
function ofDiets({ diets }: FoodBook): readonly string[] {
  return diets.flatMap(({ foods, allergies }) => [
    ...foods.flatMap(({ name, these }) => [said(name), ...(these?.map(said) ?? [])]),
    ...allergies.map(said),
  ]);
}

// Names stay the same for a book, and for a meal: they are worked out once for each.
const ofBook = new WeakMap<FoodBook, readonly string[]>();
const ofMeal = new WeakMap<CookingMeal, readonly string[]>();

function remembered<K extends object>(
  known: WeakMap<K, readonly string[]>,
  key: K,
  make: () => readonly string[],
): readonly string[] {
  const names = known.get(key) ?? make();
  known.set(key, names);
  return names;
}

/** What it may be asked about whether it is allowed: what the diets speak of, the meal's dishes, foods and what may stand in. */
export function edibleNames(book: FoodBook, meal: CookingMeal | null): readonly string[] {
  const diets = remembered(ofBook, book, () => ofDiets(book).flatMap(withNumbers));
  if (meal === null) return [...new Set(diets)];
  const own = remembered(ofMeal, meal, () =>
    meal.dishes.flatMap((dish) => [
      ...dishNames(dish, meal),
      ...dish.ingredients.flatMap(({ item, swaps }) =>
        [item, ...swaps.map(({ use }) => use)].flatMap(foodNames),
      ),
    ]),
  );
  return [...new Set([...own, ...diets])].filter((name) => name !== "");
}
