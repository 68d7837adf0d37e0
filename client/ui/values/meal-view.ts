import { dayValues } from "../../../core/diet/day-values.ts";
import { dietsIn, type FoodBook } from "../../../core/diet/food-book.ts";
import { heldLimits, type HeldLimit } from "../../../core/diet/held-limits.ts";
import { missingWords, totalWords } from "../../../core/food/figures.ts";
import { aHelping } from "../../../core/food/helping.ts";
import { NUTRIENT_NAMES, type Nutrient } from "../../../core/food/nutrients.ts";
import { mealValues, type DishValues, type MealValues, type Values } from "../../../core/food/values.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import type { DietAnswer } from "../../../core/sync/protocol.ts";
import { nutrientName } from "../../../core/talk/nutrient-names.ts";
import { capital } from "../../../core/units/capital.ts";
import { dietSays } from "./diet-says.ts";

/** One value: its figures under the heads of the table, what is unknown of it, and the limits on it. */
export interface ValueRow {
  readonly nutrient: Nutrient;
  readonly name: string;
  readonly cells: readonly [string, string];
  /** Who has no figure for it, a sentence; null: all have one. */
  readonly missing: string | null;
  readonly limits: readonly HeldLimit[];
}

/** The values of a dish, of the meal or of the day. */
export interface ValueTableView {
  readonly name: string;
  readonly heads: readonly [string, string];
  readonly rows: readonly ValueRow[];
  /** The column that tells the most at a glance. */
  readonly glance: 0 | 1;
  /** Where its values come from; null: from the tables above it. */
  readonly dish: DishValues | null;
}

/** All that the sheet tells. */
export interface MealView {
  /** What the diets say; null: none holds. */
  readonly diet: DietAnswer | null;
  readonly tables: readonly ValueTableView[];
  /** Why nothing can be told of the day, one sentence; null: it can. */
  readonly dayProblem: string | null;
}

interface Figures {
  readonly values: Values;
  readonly counted: number;
}

function rowsOf(
  [first, second]: readonly [Figures | null, Figures],
  limits: readonly HeldLimit[],
): readonly ValueRow[] {
  // A figure and its unit stay on one line.
  const cell = (of: Figures, nutrient: Nutrient): string =>
    totalWords(nutrient, of.values[nutrient], of.counted).replace(/ (?=\S+$)/, "\u00a0");
  return NUTRIENT_NAMES.map((nutrient) => {
    const total = second.values[nutrient];
    return {
      nutrient,
      name: nutrientName(nutrient),
      cells: [first === null ? "nothing" : cell(first, nutrient), cell(second, nutrient)],
      missing: total.unknown.length === 0 ? null : missingWords(total, second.counted),
      limits: limits.filter((one) => one.nutrient === nutrient),
    };
  });
}

function dishTable(values: DishValues, limits: readonly HeldLimit[]): ValueTableView {
  const { dish, aServing, inAll } = values;
  const counted = values.counted.length;
  const own = limits.filter((one) => one.scope === "serving" && one.dish === dish.name);
  return {
    name: dish.name,
    heads: [capital(aHelping(dish)), "All of it"],
    rows: rowsOf(
      [
        { values: aServing, counted },
        { values: inAll, counted },
      ],
      own,
    ),
    glance: 0,
    dish: values,
  };
}

function mealTable({ aServing, inAll, counted }: MealValues, limits: readonly HeldLimit[]): ValueTableView {
  const figures = [
    { values: aServing, counted },
    { values: inAll, counted },
  ] as const;
  const own = limits.filter(({ scope }) => scope === "meal");
  return {
    name: "The whole meal",
    heads: ["One of each", "All of it"],
    rows: rowsOf(figures, own),
    glance: 0,
    dish: null,
  };
}

/** What is in a meal, and what the diets that hold say of it. */
export function mealView(meal: CookingMeal, book: FoodBook): MealView {
  const values = mealValues(meal, book.larder.foods);
  const diets = dietsIn(book, meal.id);
  const limits = heldLimits({ meal, diets: diets.ok ? diets.value : [], book });
  const day = dayValues(values, book);
  const dayLimits = limits.filter(({ scope }) => scope === "day");
  const dayTable = (before: Values | null, together: Values, counted: number): ValueTableView => ({
    name: "Today, with this",
    heads: ["Before", "With this"],
    rows: rowsOf(
      [
        before === null ? null : { values: before, counted: counted - values.counted },
        { values: together, counted },
      ],
      dayLimits,
    ),
    glance: 1,
    dish: null,
  });
  return {
    diet: dietSays(meal, book),
    tables: [
      ...values.dishes.map((dish) => dishTable(dish, limits)),
      mealTable(values, limits),
      ...(day.ok ? [dayTable(day.value.before, day.value.together, day.value.counted)] : []),
    ],
    dayProblem: day.ok ? null : day.error,
  };
}
