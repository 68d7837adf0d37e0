import { shortName } from "../../../core/cook/say-call.ts";
import type { CookingMeal, Dish, DishId } from "../../../core/recipe/model.ts";

/** How a dish is told from the others: a letter and, for those who see it, a colour from 1 to 8. */
export interface DishMark {
  readonly letter: string;
  readonly colour: number;
}

/** As many colours as the tokens have. */
const colours = 8;

const known = new WeakMap<CookingMeal, ReadonlyMap<DishId, DishMark>>();

/** The marks of a meal's dishes: each letter is the first of the dish's name that no earlier dish has. */
export function dishMarks(meal: CookingMeal): ReadonlyMap<DishId, DishMark> {
  const found = known.get(meal) ?? workOut(meal.dishes);
  known.set(meal, found);
  return found;
}

function workOut(dishes: readonly Dish[]): ReadonlyMap<DishId, DishMark> {
  const taken = new Set<string>();
  return new Map(
    dishes.map((dish, index) => {
      const letters = [...`${shortName(dish)}${dish.name}`.toUpperCase()].filter((letter) =>
        /\p{L}/u.test(letter),
      );
      const letter = letters.find((one) => !taken.has(one)) ?? String(index + 1);
      taken.add(letter);
      return [dish.id, { letter, colour: (index % colours) + 1 }];
    }),
  );
}
