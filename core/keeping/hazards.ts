import { findFood } from "../food/find-food.ts";
import type { FoodTable } from "../food/food.ts";
import { normaliseFood } from "../food/names.ts";
import { shortName } from "../cook/say-call.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import { hazardKinds, hazardWords } from "./hazards-table.ts";
import type { HazardKind } from "./hazards-table.ts";
import { sources } from "./sources-table.ts";

/** One thing that is in a dish. */
export interface Content {
  /** As in the recipe: "kidney beans". */
  readonly item: string;
  readonly preparation: string | null;
  /** Its food, where the dish names it; left out or null: the item says it. */
  readonly food?: string | null;
}

/** Whether it was cooked before it came into this kitchen. What does not say so counts as raw. */
const COOKED = /\b(?:canned|tinned|jarred|cooked|boiled|baked|steamed|refried|precooked)\b/;
const NO_BEAN = new RegExp(
  "\\b(?:green|string|snap|wax|yellow|french|runner|mung|adzuki|soy|soya|edamame|sprout|paste|sauce|curd|thread|" +
    "vanilla|cocoa|cacao|coffee|jelly|yam|fresh|flour)\\b",
);
const NO_RICE = /\b(?:flour|milk|noodle|vinegar|wine|paper|syrup|bran|cauliflower|oil)\b/;
const HERB =
  /\b(?:garlic|herb|basil|rosemary|thyme|oregano|sage|parsley|cilantro|dill|chive|mint|tarragon)\b/;

/** The names that something has, without the hyphens, plurals and accents: the recipe's own and the table's. */
function namesOf({ item, preparation, food: named }: Content, table: FoodTable | null): string {
  const food = table === null ? null : findFood(table, item, preparation);
  const names = [item, preparation ?? "", named ?? "", food?.ok === true ? food.value.name : ""];
  return names.map(normaliseFood).join(" ; ");
}

const isRawBean = (names: string): boolean =>
  /\b(?:bean|kidney|cannellini|rajma|haricot)\b/.test(names) && !NO_BEAN.test(names) && !COOKED.test(names);
const isRice = (names: string): boolean => /\brice\b/.test(names) && !NO_RICE.test(names);
const isSprout = (names: string): boolean => /\bsprout\b/.test(names) && !/\bbrussels?\b/.test(names);
const isHoney = (names: string): boolean => /\bhoney\b/.test(names);
const isPotato = (names: string): boolean => /\bpotato\b/.test(names) && !/\b(?:flour|starch)\b/.test(names);
const isTruePotato = (names: string): boolean => isPotato(names) && !/\bsweet\b/.test(names);
const isOil = (names: string): boolean => /\boil\b/.test(names);
const isHerb = (names: string): boolean => HERB.test(names) && !/\b(?:powder|dried|dry)\b/.test(names);

/** Whether the things in a dish, and what its steps say, come to a hazard. */
function has(kind: HazardKind, contents: readonly string[], steps: string): boolean {
  switch (kind) {
    case "raw-beans":
      return contents.some(isRawBean);
    case "rice":
      return contents.some(isRice);
    case "garlic-in-oil":
      return contents.some(isOil) && contents.some(isHerb);
    case "raw-sprouts":
      return contents.some(isSprout);
    case "honey":
      return contents.some(isHoney);
    case "potatoes-in-foil":
      return contents.some(isPotato) && /\bfoil\b/i.test(steps);
    case "green-potatoes":
      return contents.some(isTruePotato);
  }
}

/**
 * The hazards of what is in a dish. It is read from names alone, so it errs to the safe side: beans that are not said
 * to be cooked count as raw, and oil with garlic as garlic in oil, however it is cooked.
 * @param steps all that the recipe says to do
 * @param table null: there is none, and the recipe's own names must do
 */
export function hazardsIn(
  contents: readonly Content[],
  steps: string,
  table: FoodTable | null,
): readonly HazardKind[] {
  const names = contents.map((content) => namesOf(content, table));
  return hazardKinds.filter((kind) => has(kind, names, steps));
}

/** All that a recipe says to do. */
export const stepsOf = (dish: Dish): string =>
  dish.steps.flatMap((step) => [step.do, ...(step.ways?.all ?? []).map((way) => way.do)]).join(" ");

/** The hazards of a dish as it is cooked. */
export const hazardsOf = (dish: Dish, table: FoodTable | null): readonly HazardKind[] =>
  hazardsIn(dish.ingredients, stepsOf(dish), table);

/** The same without those of which the recipe itself warns. */
export function hazardsUnsaid(dish: Dish, table: FoodTable | null): readonly HazardKind[] {
  const told = [...dish.cautions, stepsOf(dish)].join(" ");
  return hazardsOf(dish, table).filter((kind) => hazardWords[kind].said.some((words) => !words.test(told)));
}

/** A hazard's caution as written: with its source. */
const writtenCaution = (kind: HazardKind): string =>
  `${hazardWords[kind].caution} (${sources[hazardWords[kind].source].name}.)`;

/** The meal with the cautions for what is in its dishes behind the recipes' own: told wherever those are. */
export function withHazards(meal: CookingMeal, table: FoodTable | null): CookingMeal {
  const dishes = meal.dishes.map((dish): Dish => {
    const more = hazardsUnsaid(dish, table).map(writtenCaution);
    return more.length === 0 ? dish : { ...dish, cautions: [...dish.cautions, ...more] };
  });
  return { ...meal, dishes };
}

/** The cautions for what is in a meal's dishes, one line each with its dish; of which a recipe itself warns are none. */
export const hazardCautions = (meal: CookingMeal, table: FoodTable | null): readonly string[] =>
  meal.dishes.flatMap((dish) =>
    hazardsUnsaid(dish, table).map((kind) => `${shortName(dish)}: ${writtenCaution(kind)}`),
  );
