import type { FoodTable } from "../food/food.ts";
import { namedFoods } from "../food/ingredient-food.ts";
import { normaliseFood } from "../food/names.ts";
import { readLabels, withLabels } from "../food/read-label.ts";
import { ID } from "./fields.ts";
import type { Mistake } from "./mistake.ts";
import type { Dish, DishId, Kitchen, Meal } from "./model.ts";
import { dishId } from "./model.ts";
import { readDish, type WhyNoFood } from "./read-dish.ts";
import { heardAs, readKitchen, readMeal } from "./read-meal.ts";

/** The folders of a pantry, in the order in which they are read. */
export const SHELVES = ["kitchens", "labels", "dishes", "meals"] as const;
export type Shelf = (typeof SHELVES)[number];

/** One file of a pantry. */
export interface PantryFile {
  readonly shelf: Shelf;
  /** With its ending: "lentil-soup.yaml". */
  readonly name: string;
  readonly text: string;
}

/** Everything that can be cooked, and everything that is wrong with the rest. */
export interface PantryContents {
  readonly dishes: ReadonlyMap<DishId, Dish>;
  readonly meals: readonly Meal[];
  /** The table of foods with the cook's labels in it; null where there is no table. */
  readonly foods: FoodTable | null;
  readonly mistakes: readonly Mistake[];
}

const stemOf = (name: string): string => name.replace(/\.ya?ml$/i, "");
const placeOf = ({ shelf, name }: PantryFile): string => `${shelf}/${name}`;

function misnamed(file: PantryFile): readonly Mistake[] {
  if (ID.test(stemOf(file.name))) return [];
  const sentence = `"${file.name}" cannot be a file name here; use lower-case words joined by hyphens, like lentil-soup.yaml.`;
  return [{ file: placeOf(file), line: 1, field: "", sentence }];
}

/** A dish whose name sounds like one that is already there cannot be asked for. */
function sameName(file: PantryFile, dish: Dish, taken: ReadonlyMap<string, string>): readonly Mistake[] {
  const other = taken.get(heardAs(dish.name));
  if (other === undefined) return [];
  const line = Math.max(1, file.text.split("\n").findIndex((text) => text.startsWith("dish:")) + 1);
  const sentence = `"${dish.name}" is already the name of the dish in ${other}; give one of them another name.`;
  return [{ file: placeOf(file), line, field: "dish", sentence }];
}

interface Dishes {
  readonly byStem: ReadonlyMap<string, Dish | null>;
  readonly mistakes: readonly Mistake[];
}

function readDishes(files: readonly PantryFile[], whyNoFood: WhyNoFood): Dishes {
  const byStem = new Map<string, Dish | null>();
  const taken = new Map<string, string>();
  const mistakes: Mistake[] = [];
  for (const file of files) {
    const stem = stemOf(file.name);
    const read = readDish(placeOf(file), stem, file.text, whyNoFood);
    const clash = read.dish === null ? [] : sameName(file, read.dish, taken);
    const wrong = [...misnamed(file), ...read.mistakes, ...clash];
    mistakes.push(...wrong);
    byStem.set(stem, wrong.length === 0 ? read.dish : null);
    if (read.dish !== null && clash.length === 0) taken.set(heardAs(read.dish.name), placeOf(file));
  }
  return { byStem, mistakes };
}

interface LabelShelf {
  readonly foods: FoodTable | null;
  readonly whyNoFood: WhyNoFood;
  readonly mistakes: readonly Mistake[];
}

function readLabelShelf(files: readonly PantryFile[], table: FoodTable | null): LabelShelf {
  if (table === null) return { foods: null, whyNoFood: () => null, mistakes: [] };
  const labels = readLabels(
    files.map((file) => ({ place: placeOf(file), text: file.text })),
    table,
  );
  const misnamedFiles = files.flatMap(misnamed);
  const foods = withLabels(table, labels);
  const whyNoFood: WhyNoFood = (names) => {
    // The name of a label with a mistake is a name: that mistake is told already.
    const isBroken = names.split(/\s+or\s+/i).some((name) => labels.broken.has(normaliseFood(name)));
    const named = isBroken ? null : namedFoods(foods, names);
    return named?.ok === false ? named.error : null;
  };
  return { foods, whyNoFood, mistakes: [...misnamedFiles, ...labels.mistakes] };
}

/**
 * Reads a whole pantry. A file with mistakes is left out; all the others are there.
 * @param table the foods that labels and dishes may name; null: there is none, and labels are not read
 */
export function readPantry(files: readonly PantryFile[], table: FoodTable | null = null): PantryContents {
  const on = (shelf: Shelf): readonly PantryFile[] => {
    return files.filter((file) => file.shelf === shelf).toSorted((a, b) => (a.name < b.name ? -1 : 1));
  };
  const labels = readLabelShelf(on("labels"), table);
  const kitchens = on("kitchens").map((file) => ({ file, read: readKitchen(placeOf(file), file.text) }));
  const dishes = readDishes(on("dishes"), labels.whyNoFood);
  const stock = {
    dishes: dishes.byStem,
    kitchens: new Map<string, Kitchen | null>(
      kitchens.map(({ file, read }) => [stemOf(file.name), read.kitchen]),
    ),
  };
  const meals = on("meals").map((file) => {
    const read = readMeal(placeOf(file), stemOf(file.name), file.text, stock);
    return { meal: read.meal, mistakes: [...misnamed(file), ...read.mistakes] };
  });
  return {
    dishes: new Map(
      [...dishes.byStem].flatMap(([stem, dish]): [DishId, Dish][] =>
        dish === null ? [] : [[dishId(stem), dish]],
      ),
    ),
    meals: meals.flatMap(({ meal, mistakes }) => (meal === null || mistakes.length > 0 ? [] : [meal])),
    foods: labels.foods,
    mistakes: [
      ...labels.mistakes,
      ...kitchens.flatMap(({ file, read }) => [...misnamed(file), ...read.mistakes]),
      ...dishes.mistakes,
      ...meals.flatMap(({ mistakes }) => mistakes),
    ],
  };
}
