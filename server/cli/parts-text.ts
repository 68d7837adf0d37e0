import { totalWords } from "../../core/food/figures.ts";
import type { Nutrient } from "../../core/food/nutrients.ts";
import { notCountedWords, partWords, type PartWords } from "../../core/food/part-words.ts";
import { valueParts } from "../../core/food/value-parts.ts";
import type { DishValues, MealValues } from "../../core/food/values.ts";
import { valuesCaution, valuesSource } from "../../core/food/values-words.ts";
import { nutrientName } from "../../core/talk/nutrient-names.ts";
import { columns, wrapped, type Column } from "./columns.ts";

const width = 80;

const shape: readonly Column[] = [
  { most: 18, align: "left" },
  { most: 22, align: "left" },
  { most: 8, align: "right" },
  { most: 8, align: "right" },
  { most: 9, align: "right" },
  { most: 5, align: "left" },
];

const heads = ["", "taken for", "weighs", "in 100 g", "in all", "note"];

interface Told extends PartWords {
  /** The numbers of its notes, "1, 2". */
  readonly marks: string;
}

/** Each note once, with a number that the rows refer to. */
function numbered(parts: readonly PartWords[]): {
  readonly told: readonly Told[];
  readonly notes: readonly string[];
} {
  const notes = [...new Set(parts.flatMap((part) => part.notes))];
  const told = parts.map((part) => {
    return { ...part, marks: part.notes.map((note) => notes.indexOf(note) + 1).join(", ") };
  });
  return { told, notes: notes.map((note, index) => `${index + 1}. ${note}`) };
}

const row = ({ item, amount, food, from, weighs, in100g, inAll, marks }: Told): readonly string[] => [
  `${item}, ${amount}`,
  food === null ? "no food of the table" : `${food}${from === null ? "" : `, ${from}`}`,
  weighs ?? "unknown",
  in100g ?? "unknown",
  inAll,
  marks,
];

function dishText(nutrient: Nutrient, values: DishValues): readonly string[] {
  const { dish, parts, notCounted, inAll, aServing } = valueParts(nutrient, values);
  const { told, notes } = numbered(parts.map((part) => partWords(nutrient, part)));
  const { servings } = dish.yield;
  const much = (of: typeof inAll): string => totalWords(nutrient, of, parts.length);
  const left = notCountedWords(notCounted);
  return [
    `${dish.name}, ${servings} ${servings === 1 ? "serving" : "servings"}`,
    ...columns([heads, ...told.map(row)], shape),
    ...[
      `${nutrientName(nutrient)}: ${much(inAll)} in all, ${much(aServing)} a serving.`,
      ...notes,
      ...(left === null ? [] : [left]),
    ].flatMap((line) => wrapped(line, width)),
    "",
  ];
}

/** Where a value of a meal comes from, ingredient by ingredient, for people; at most 80 letters wide. */
export const partsText = (nutrient: Nutrient, { dishes }: MealValues): string =>
  [
    ...dishes.flatMap((values) => dishText(nutrient, values)),
    ...[
      "What is unknown is not nought: where something is unknown, the true figure may be higher.",
      `Source of SR28: ${valuesSource}.`,
      valuesCaution,
    ].flatMap((line) => wrapped(line, width)),
  ].join("\n");
