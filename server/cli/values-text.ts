import { totalWords } from "../../core/food/figures.ts";
import type { Food } from "../../core/food/food.ts";
import { NUTRIENT_NAMES } from "../../core/food/nutrients.ts";
import { notCountedWords } from "../../core/food/part-words.ts";
import type { Counted, DishValues, MealValues, Values } from "../../core/food/values.ts";
import { valuesCaution, valuesSource } from "../../core/food/values-words.ts";
import { nutrientName } from "../../core/talk/nutrient-names.ts";
import { columns, wrapped, type Column } from "./columns.ts";

const width = 80;

const shape: readonly Column[] = [
  { most: 14, align: "left" },
  { most: 23, align: "right" },
  { most: 23, align: "right" },
  { most: 14, align: "left" },
];

function table(
  inAll: Values,
  aServing: Values,
  counted: number,
  heads: readonly string[],
): readonly string[] {
  const rows = NUTRIENT_NAMES.map((nutrient) => {
    const missing = inAll[nutrient].unknown.length;
    return [
      nutrientName(nutrient),
      totalWords(nutrient, inAll[nutrient], counted),
      totalWords(nutrient, aServing[nutrient], counted),
      missing === 0 ? "" : `${missing} of ${counted}`,
    ];
  });
  return columns([heads, ...rows], shape);
}

const isUnknownWhole = (one: Counted): boolean => one.kind === "unknown";

/** The ingredients that are known but have no figure for some values, each with these. */
function gaps({ counted, inAll }: DishValues): readonly string[] {
  const whole = counted.filter(isUnknownWhole).map(({ ingredient }) => ingredient.item);
  return NUTRIENT_NAMES.flatMap((nutrient) => {
    const missing = inAll[nutrient].unknown.filter((item) => !whole.includes(item));
    return missing.length === 0 ? [] : [`No value for ${nutrientName(nutrient)}: ${missing.join(", ")}.`];
  });
}

/** Where the figures of each ingredient are from. */
function sources({ counted }: DishValues): readonly string[] {
  const of = (told: (food: Food) => string | null): readonly string[] =>
    counted.flatMap(({ ingredient, food }) => {
      const source = food === null ? null : told(food);
      return source === null ? [] : [`${ingredient.item} (${source})`];
    });
  const [labels, numbers] = [of(({ label }) => label), of(({ ndb }) => ndb)];
  return [
    ...(labels.length === 0 ? [] : [`From a label, as far as its rounding tells: ${labels.join(", ")}.`]),
    ...(numbers.length === 0 ? [] : [`From SR28, by number: ${numbers.join(", ")}.`]),
  ];
}

function notes(values: DishValues): readonly string[] {
  const unknown = values.counted.flatMap((one) =>
    one.kind === "unknown" ? [`Unknown: ${one.ingredient.item}. ${one.why}`] : [],
  );
  const assumed = values.counted.flatMap((one) =>
    one.kind === "weighed" && one.weight.assumed !== null
      ? [`${one.ingredient.item} (${one.weight.assumed})`]
      : [],
  );
  const notes = values.counted.flatMap((one) => (one.kind === "weighed" ? (one.weight.note ?? []) : []));
  const taken = [...new Set(notes)];
  const left = notCountedWords(values.notCounted);
  return [
    ...unknown,
    ...gaps(values),
    ...sources(values),
    ...(assumed.length === 0 ? [] : [`Size taken, because the recipe names none: ${assumed.join(", ")}.`]),
    ...taken,
    ...(left === null ? [] : [left]),
  ].flatMap((note) => wrapped(note, width));
}

function dishText(values: DishValues): readonly string[] {
  const { dish, counted, inAll, aServing } = values;
  const servings = dish.yield.servings;
  return [
    `${dish.name}, ${servings} ${servings === 1 ? "serving" : "servings"}`,
    ...table(inAll, aServing, counted.length, ["", "in all", "a serving", "not known for"]),
    ...notes(values),
    "",
  ];
}

/** What a meal holds, for people; at most 80 letters wide. */
export function valuesText({ meal, dishes, inAll, aServing, counted }: MealValues): string {
  return [
    ...dishes.flatMap(dishText),
    `${meal.name}, all dishes`,
    ...table(inAll, aServing, counted, ["", "in all", "one serving of each", "not known for"]),
    "",
    ...wrapped(
      "What is not known is not nought: where something is missing, the true figure may be higher.",
      width,
    ),
    ...wrapped(`Source: ${valuesSource}.`, width),
    ...wrapped(valuesCaution, width),
  ].join("\n");
}
