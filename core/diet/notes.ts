import type { CookingMeal, Ingredient } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import type { Larder } from "./groups.ts";
import { kindOf, partOf } from "./kind.ts";
import { capital } from "../units/capital.ts";

/** A caution that holds whatever the diet says. */
interface Caution {
  readonly group: string;
  /** What to say of the foods that are meant. */
  readonly say: (foods: string) => string;
}

/**
 * Potassium: cream of tartar 16,500 mg and low-sodium baking powder 10,100 mg in 100 g (USDA SR28 18373 and 18371);
 * salt substitutes are mostly potassium chloride (from memory). Grapefruit and medicines: US Food and Drug
 * Administration, consumer update (from memory).
 */
const CAUTIONS: readonly Caution[] = [
  {
    group: "potassium salt",
    say: (foods) =>
      `${foods}: full of potassium. With kidney trouble or some medicines that is dangerous; ask your clinician first.`,
  },
  {
    group: "grapefruit",
    say: (foods) => `${foods}: it changes how many medicines work; ask your clinician or pharmacist first.`,
  },
];

/** What to be told of some foods with medicines and failing kidneys. */
export function notesOn(
  asked: readonly Pick<Ingredient, "item" | "preparation" | "food">[],
  larder: Larder,
): readonly string[] {
  return CAUTIONS.flatMap(({ group, say }) => {
    const found = larder.groups.get(group);
    if (found === undefined) return [];
    const meant = asked.filter((one) => {
      const part = partOf(kindOf(one, larder), found, larder);
      return part === "is" || part === "has";
    });
    return meant.length === 0 ? [] : [capital(say(listed([...new Set(meant.map(({ item }) => item))])))];
  });
}

/** What to be told of a meal's foods with medicines and failing kidneys; what the recipe offers instead counts too. */
export const foodNotes = (meal: CookingMeal, larder: Larder): readonly string[] =>
  notesOn(
    meal.dishes.flatMap(({ ingredients }) =>
      ingredients.flatMap(({ item, preparation, food, swaps }) => [
        { item, preparation, food },
        ...swaps.map(({ use }) => ({ item: use, preparation: null, food: null })),
      ]),
    ),
    larder,
  );
