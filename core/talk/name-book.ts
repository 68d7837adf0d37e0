import type { Session } from "../cook/session.ts";
import type { CookingMeal } from "../recipe/model.ts";
import { deeds } from "./deeds.ts";
import {
  dishNames,
  foodNames,
  numberedNames,
  ordinals,
  timerNames,
  titleNames,
  wayNames,
  withNumbers,
} from "./names.ts";
import { toolNames } from "./tool-swaps-table.ts";
import { nameWords } from "./utterance.ts";
import { workNouns, workVerbs } from "./work-words.ts";

/** The slots that hold names, as they can be said in one meal. */
export type NameSlot =
  | "dish"
  | "target"
  | "timer"
  | "food"
  | "name"
  | "stand"
  | "way"
  | "tool"
  | "work"
  | "working"
  | "deed"
  | "note"
  | "pick"
  | "helping"
  | "edible"
  | "left"
  | "thing"
  | "listed";

/** What can be said in each name slot; each name in words without articles. */
export type NameBook = { readonly [S in NameSlot]: readonly string[] };

/** What one person eats, whatever a recipe calls it. */
const usualHelpings = ["serving", "portion"];

/** Asked about in any meal; listened for only where the recipes leave a choice. */
const usualWays = ["oven", "pan"];

/** Those that stay the same all evening. */
type MealNames = Omit<
  NameBook,
  "timer" | keyof ElsewhereNames | "thing" | "tool" | "deed" | "work" | "working" | "note"
>;

/** Notes that the ear listens for; typed, any words will do. */
const usualNotes = [
  "cook it longer",
  "cook it less",
  "start earlier",
  "more heat",
  "less heat",
  "bigger pot",
  "bigger batch",
  "smaller batch",
];

/** Those that are the same in any meal. */
const ofAnyMeal = { tool: toolNames, note: usualNotes, deed: deeds, work: workVerbs, working: workNouns };

function mealNames(meal: CookingMeal): MealNames {
  const dish = meal.dishes.flatMap((one) => dishNames(one, meal));
  const titles = meal.dishes.flatMap((one) => one.steps.flatMap((step) => titleNames(step.title)));
  const food = meal.dishes.flatMap((one) => one.ingredients.flatMap(({ item }) => foodNames(item)));
  const stand = meal.dishes.flatMap((one) =>
    one.ingredients.flatMap(({ swaps }) => swaps.flatMap(({ use }) => foodNames(use))),
  );
  const way = meal.dishes.flatMap((one) =>
    one.steps.flatMap(({ ways }) => ways?.all.flatMap(({ name }) => wayNames(name)) ?? []),
  );
  const target = unique([...dish, ...titles]);
  return {
    dish: unique(dish),
    target,
    food: unique(food),
    stand: unique(stand),
    way: unique([...way, ...usualWays]),
    helping: unique([...meal.dishes.flatMap((one) => withNumbers(one.yield.of)), ...usualHelpings]),
    name: target,
  };
}

const unique = (names: readonly string[]): readonly string[] =>
  [...new Set(names)].filter((name) => name !== "");

// A meal's names stay the same all evening: they are worked out once for each meal object.
const known = new WeakMap<CookingMeal, MealNames>();

const nothing: MealNames = {
  dish: [],
  target: [],
  food: [],
  stand: [],
  way: [],
  name: [],
  helping: usualHelpings,
};

/** The names that do not come from the meal. */
export interface ElsewhereNames {
  /** On offer in an open question, as they are offered. */
  readonly pick: readonly string[];
  /** What may be left: `leftNames`. */
  readonly left: readonly string[];
  /** What is on the buying list: `listedNames`. */
  readonly listed: readonly string[];
  /** What a household may want: `goodsNames`. */
  readonly goods: readonly string[];
  /** What may be asked about as food: `edibleNames`. */
  readonly edible: readonly string[];
}

/** Everything that can be named at this moment. */
export function namesIn(session: Session | null, elsewhere: ElsewhereNames): NameBook {
  const { pick: candidates, goods, ...named } = elsewhere;
  const { listed } = named;
  const pick = unique([
    ...candidates.map((name) => nameWords(name).join(" ")),
    ...(candidates.length === 0 ? [] : [...ordinals, "last"]),
  ]);
  const of = { ...ofAnyMeal, ...named, pick };
  if (session === null) return { ...nothing, ...of, timer: [], thing: unique([...listed, ...goods]) };
  const { meal } = session;
  const names = known.get(meal) ?? mealNames(meal);
  known.set(meal, names);
  const timers = [...session.timers.values()];
  const timer = unique(
    timers.flatMap(({ name, dish }) => [
      ...timerNames(name, meal.dishes.find((one) => one.id === dish) ?? null, meal),
      ...numberedNames(name, timers.filter((other) => other.name === name).length),
    ]),
  );
  return { ...names, ...of, timer, thing: unique([...names.food, ...listed, ...goods]) };
}
