import { compareHeat, formatHeat } from "../units/temperature.ts";
import { kitchenFile, mealFile } from "./meal-file.ts";
import type { KitchenFile, MealFile } from "./meal-file.ts";
import type { Mistake } from "./mistake.ts";
import type { Dish, Kitchen, Meal, Need } from "./model.ts";
import { dishId, mealId } from "./model.ts";
import { listed, nearest } from "./nearest.ts";
import { readYaml } from "./read-yaml.ts";
import type { WrittenFile } from "./read-yaml.ts";
import { sentenceOf, shapeMistakes } from "./shape-mistakes.ts";

/** What a meal may refer to. A name that is there with null has a file, but one with mistakes. */
export interface Stock {
  readonly dishes: ReadonlyMap<string, Dish | null>;
  readonly kitchens: ReadonlyMap<string, Kitchen | null>;
}

interface Complaint {
  readonly path: readonly string[];
  readonly sentence: string;
}

function kitchenOf(file: KitchenFile): Kitchen {
  return {
    burners: file.burners,
    ovens: Object.entries(file.ovens ?? {}).map(([id, { racks, heats, cools, hottest }]) => {
      return { name: id.replaceAll("-", " "), racks, heats, cools, hottest: hottest.high };
    }),
    appliances: file.appliances ?? [],
  };
}

/** Reads one kitchen; null with its mistakes when there are any. */
export function readKitchen(
  file: string,
  text: string,
): { readonly kitchen: Kitchen | null; readonly mistakes: readonly Mistake[] } {
  const { written, mistakes } = readYaml(file, text);
  if (written === null) return { kitchen: null, mistakes };
  const shape = kitchenFile.safeParse(written.value, { error: sentenceOf });
  if (!shape.success)
    return { kitchen: null, mistakes: [...mistakes, ...shapeMistakes(shape.error, written)] };
  return { kitchen: mistakes.length === 0 ? kitchenOf(shape.data) : null, mistakes };
}

/** Why this kitchen cannot give what a step needs, as the rest of a sentence; null when it can. */
function lack(need: Need, kitchen: Kitchen): string | null {
  switch (need.kind) {
    case "burner":
      return need.count > kitchen.burners
        ? `needs ${need.count} burners and this kitchen has ${kitchen.burners}`
        : null;
    case "oven": {
      if (kitchen.ovens.length === 0) return "needs an oven and this kitchen has none";
      const hot = kitchen.ovens.filter(({ hottest }) => compareHeat(hottest, need.heat.low) >= 0);
      if (hot.length === 0) return `needs ${formatHeat(need.heat.low)} and no oven here gets so hot`;
      const isRoomy = hot.some(({ racks }) => racks >= need.racks);
      return isRoomy ? null : `needs ${need.racks} oven racks and no oven here has so many`;
    }
    case "appliance": {
      const wanted = need.name.toLowerCase();
      const has = kitchen.appliances.some((name) => name.toLowerCase() === wanted);
      return has ? null : `needs a ${need.name} and this kitchen has none`;
    }
    case "bowl":
    case "fridge":
      return null;
  }
}

function lacks(id: string, dish: Dish, kitchen: Kitchen): readonly Complaint[] {
  return dish.steps.flatMap((step) => {
    const others = step.ways?.all ?? [];
    // One way that can be done is enough.
    if (others.some(({ needs }) => needs.every((need) => lack(need, kitchen) === null))) return [];
    return step.needs.flatMap((need) => {
      const why = lack(need, kitchen);
      if (why === null) return [];
      const advice = "leave the dish out or cook elsewhere.";
      return [
        { path: ["dishes", id], sentence: `The step "${step.title}" of ${dish.name} ${why}; ${advice}` },
      ];
    });
  });
}

function absent(what: string, id: string, known: readonly string[]): string {
  const meant = nearest(id, known);
  const advice = meant === null ? `there are ${listed(known)}.` : `did you mean "${meant}"?`;
  return `There is no ${what} "${id}"; ${known.length === 0 ? "write its file first." : advice}`;
}

/** How a name sounds: case, commas and hyphens are not heard. */
export const heardAs = (name: string): string =>
  name
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter(Boolean)
    .join(" ");

function sharedNames(dishes: readonly (readonly [id: string, dish: Dish])[]): readonly Complaint[] {
  const owner = new Map<string, Dish>();
  return dishes.flatMap(([id, dish]) =>
    dish.says.flatMap((name) => {
      const other = owner.get(heardAs(name));
      if (other === undefined) owner.set(heardAs(name), dish);
      if (other === undefined || other === dish) return [];
      const sentence = `"${name}" can mean ${other.name} or ${dish.name} in this meal; take it off the "says" of one of them.`;
      return [{ path: ["dishes", id], sentence }];
    }),
  );
}

function dishComplaints(file: MealFile, kitchen: Kitchen | null, { dishes }: Stock): readonly Complaint[] {
  const wanted = Object.keys(file.dishes);
  if (wanted.length === 0)
    return [{ path: ["dishes"], sentence: "This meal has no dishes; name at least one." }];
  const found = wanted.flatMap((id) => {
    const dish = dishes.get(id);
    return dish === undefined || dish === null ? [] : [[id, dish] as const];
  });
  return [
    ...wanted.flatMap((id) => {
      if (!dishes.has(id))
        return [{ path: ["dishes", id], sentence: absent("dish", id, [...dishes.keys()]) }];
      if (dishes.get(id) !== null) return [];
      return [
        { path: ["dishes", id], sentence: `The file of the dish "${id}" has mistakes; mend that one first.` },
      ];
    }),
    ...(kitchen === null ? [] : found.flatMap(([id, dish]) => lacks(id, dish, kitchen))),
    ...sharedNames(found),
  ];
}

function kitchenComplaints(file: MealFile, { kitchens }: Stock): readonly Complaint[] {
  const id = file.kitchen;
  if (!kitchens.has(id))
    return [{ path: ["kitchen"], sentence: absent("kitchen", id, [...kitchens.keys()]) }];
  if (kitchens.get(id) !== null) return [];
  return [
    { path: ["kitchen"], sentence: `The file of the kitchen "${id}" has mistakes; mend that one first.` },
  ];
}

function tied(written: WrittenFile, { path, sentence }: Complaint): Mistake {
  return { file: written.file, line: written.lineOf(path), field: path.join("."), sentence };
}

function mealFrom(id: string, file: MealFile, kitchen: Kitchen): Meal {
  return {
    id: mealId(id),
    name: file.meal,
    about: file.about,
    dishes: Object.entries(file.dishes).map(([dish, servings]) => ({ dish: dishId(dish), servings })),
    serveAt: file["serve-at"] ?? null,
    diets: file.diets ?? [],
    kitchen,
  };
}

/**
 * Reads one meal and holds it against the dishes and the kitchen that it names; null when there is any mistake.
 * @param file the name to put on mistakes
 * @param id the file's stem
 */
export function readMeal(
  file: string,
  id: string,
  text: string,
  stock: Stock,
): { readonly meal: Meal | null; readonly mistakes: readonly Mistake[] } {
  const { written, mistakes } = readYaml(file, text);
  if (written === null) return { meal: null, mistakes };
  const shape = mealFile.safeParse(written.value, { error: sentenceOf });
  if (!shape.success) return { meal: null, mistakes: [...mistakes, ...shapeMistakes(shape.error, written)] };
  const kitchen = stock.kitchens.get(shape.data.kitchen) ?? null;
  const complaints = [...kitchenComplaints(shape.data, stock), ...dishComplaints(shape.data, kitchen, stock)];
  const all = [...mistakes, ...complaints.map((complaint) => tied(written, complaint))];
  return {
    meal: all.length === 0 && kitchen !== null ? mealFrom(id, shape.data, kitchen) : null,
    mistakes: all,
  };
}
