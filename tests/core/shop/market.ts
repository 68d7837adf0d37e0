import { readFile } from "node:fs/promises";
import { readIngredientLine } from "../../../core/food/ingredient-line.ts";
import {
  dishId,
  ingredientId,
  mealId,
  type CookingMeal,
  type Dish,
  type Ingredient,
} from "../../../core/recipe/model.ts";
import { buyingList, type BuyingLine, type BuyingList } from "../../../core/shop/buying-list.ts";
import { fridgeUnknown } from "../../../core/shop/from-fridge.ts";
import { readHouse } from "../../../core/shop/in-house.ts";
import { readPlaces } from "../../../core/shop/places.ts";
import { writtenList, type SectionKind, type WrittenLine } from "../../../core/shop/written-list.ts";
import { shippedFoods } from "../food/shipped-foods.ts";

/** The tables that come with Stovecall. */
export const { table, foods } = await shippedFoods();
const place = new URL("../../../recipes/foods/places.txt", import.meta.url);
export const shippedPlaces = readPlaces("foods/places.txt", await readFile(place, "utf8"));

/** An ingredient as a cook writes it: "1 1/2 cups red lentils, rinsed", "1 green chili, minced (optional)". */
export function ingredient(written: string): Ingredient {
  const line = readIngredientLine(written);
  if (!line.ok || line.value.item === null)
    throw new Error(line.ok ? `"${written}" has no food` : line.error);
  const { item, amount, preparation, optional } = line.value;
  return {
    id: ingredientId(written),
    item,
    amount,
    preparation,
    optional,
    food: null,
    weighs: null,
    swaps: [],
  };
}

/** A dish of such lines, called `name`. */
export const dish = (name: string, lines: readonly (string | Ingredient)[]): Dish => ({
  id: dishId(name),
  name,
  says: [name],
  about: "",
  cautions: [],
  yield: { servings: 4, of: "bowls" },
  ingredients: lines.map((line) => (typeof line === "string" ? ingredient(line) : line)),
  steps: [],
});

/** A meal of dishes. */
export const meal = (name: string, dishes: readonly Dish[]): CookingMeal => ({
  id: mealId(name),
  name,
  dishes,
  kitchen: { burners: 2, ovens: [], appliances: [] },
});

/** A soup and a sauce. */
export const soupAndSauce = (
  soup: readonly string[],
  sauce: readonly string[] = [],
): readonly CookingMeal[] => [meal("Supper", [dish("Soup", soup), dish("Sauce", sauce)])];

/** What is to be bought for the meals. @param house a line for each thing; what is left over begins with "left: " */
export function listFor(meals: readonly CookingMeal[], house: readonly string[] = []): BuyingList {
  const read = house.flatMap((line) => {
    const { house: things, mistakes } = readHouse(line.replace(/^left: /, ""));
    if (mistakes.length > 0) throw new Error(mistakes[0]?.sentence);
    return things.map((one) => ({ ...one, from: line.startsWith("left: ") ? "leftover" : "house" }) as const);
  });
  return buyingList({
    meals,
    foods: table,
    places: shippedPlaces.places,
    house: read,
    fridge: fridgeUnknown,
  });
}

/** "name: buy | note | shares" of every line of one kind. */
export function written(
  meals: readonly CookingMeal[],
  kind: SectionKind = "buy",
  house: readonly string[] = [],
): readonly string[] {
  const shown = ({ name, buy, note, shares }: WrittenLine): string =>
    [`${name}: ${buy}`, note, shares].join(" | ");
  return writtenList(listFor(meals, house), meals)
    .sections.filter((section) => section.kind === kind)
    .flatMap(({ lines }) => lines.map(shown));
}

/** Every line of a list, wherever it stands. */
export const allLines = (list: BuyingList): readonly BuyingLine[] => [
  ...list.buy,
  ...list.ifYouLike,
  ...list.look,
  ...list.enough,
];
