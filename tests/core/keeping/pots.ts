import type { Dish, Ingredient, Step } from "../../../core/recipe/model.ts";
import { dishId, ingredientId } from "../../../core/recipe/model.ts";
import { amount, step } from "../cook/supper.ts";

/** An ingredient from "kidney beans, soaked". */
export function food(line: string): Ingredient {
  const [item = "", ...preparation] = line.split(", ");
  return {
    id: ingredientId(item.replaceAll(" ", "-")),
    item,
    amount: amount("1 cup"),
    preparation: preparation.length === 0 ? null : preparation.join(", "),
    optional: false,
    food: null,
    weighs: null,
    swaps: [],
  };
}

/** An invented dish with these ingredients, done as these sentences say. */
export function pot(name: string, lines: readonly string[], more: Partial<Dish> = {}): Dish {
  const steps: readonly Step[] = more.steps ?? [step("stir", "stir the pot")];
  return {
    id: dishId(name.toLowerCase().replaceAll(" ", "-")),
    name,
    says: [],
    about: "",
    cautions: [],
    yield: { servings: 4, of: "bowls" },
    ingredients: lines.map(food),
    ...more,
    steps,
  };
}
