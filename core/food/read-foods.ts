import type { Mistake } from "../recipe/mistake.ts";
import { compare, parseRational, ratio, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import type { Food, FoodMeasure, FoodTable } from "./food.ts";
import { normaliseFood } from "./names.ts";
import { eachNutrient, isNutrient, NUTRIENT_NAMES, type Nutrient } from "./nutrients.ts";
import { readMeasure } from "./read-measure.ts";

/** What came of a table of foods; a food with a mistake is left out. */
export interface FoodsRead {
  readonly table: FoodTable;
  readonly foods: readonly Food[];
  readonly mistakes: readonly Mistake[];
}

/** A food while its lines are read. */
interface Paragraph {
  readonly name: string;
  readonly line: number;
  readonly also: string[];
  readonly figures: Map<Nutrient, Rational | null>;
  readonly measures: FoodMeasure[];
  readonly seen: Set<string>;
  ndb: string;
  refuse: Rational | null;
  isWrong: boolean;
}

const MOST_REFUSE = ratio(100);

const parts = (text: string): readonly string[] => text.split(";").map((part) => part.trim());

/** "12.5", or "?" for a figure that nobody has determined. */
function readFigure(text: string): Result<Rational | null, string> {
  if (text === "?") return ok(null);
  const figure = /^\d+(?:\.\d+)?$/.test(text) ? parseRational(text) : null;
  return figure?.ok === true
    ? figure
    : err(`"${text}" is no figure; write one like 12.5, or ? where none is known.`);
}

function readFigures(text: string, food: Paragraph): readonly string[] {
  return parts(text).flatMap((part) => {
    const [name = "", written = "", ...rest] = part.split(" ");
    if (!isNutrient(name))
      return [`"${name}" is no value of this table; they are ${NUTRIENT_NAMES.join(", ")}.`];
    if (food.figures.has(name)) return [`${name} stands here twice; keep one figure.`];
    const figure = readFigure([written, ...rest].join(" "));
    if (!figure.ok) return [figure.error];
    food.figures.set(name, figure.value);
    return [];
  });
}

function readMeasures(text: string, food: Paragraph): readonly string[] {
  return parts(text).flatMap((part) => {
    const measure = readMeasure(part);
    if (!measure.ok) return [measure.error];
    food.measures.push(measure.value);
    return [];
  });
}

function readRefuse(text: string, food: Paragraph): readonly string[] {
  const share = readFigure(text);
  if (!share.ok) return [share.error];
  if (share.value !== null && compare(share.value, MOST_REFUSE) >= 0)
    return ["The refuse is a share in percent; write less than 100."];
  food.refuse = share.value;
  return [];
}

function readNumber(text: string, food: Paragraph): readonly string[] {
  food.ndb = text;
  return /^\d{5}$/.test(text) ? [] : [`"${text}" is no NDB number; it has five digits.`];
}

function readAlso(text: string, food: Paragraph): readonly string[] {
  food.also.push(...parts(text));
  return [];
}

type ReadKey = (text: string, food: Paragraph) => readonly string[];

const KEYS: ReadonlyMap<string, ReadKey> = new Map<string, ReadKey>([
  ["usda", readNumber],
  ["also", readAlso],
  ["main", readFigures],
  ["salts", readFigures],
  ["refuse", readRefuse],
  ["weighs", readMeasures],
]);

/** These may fill several lines. */
const LONG: ReadonlySet<string> = new Set(["also", "weighs"]);

function readLine(line: string, food: Paragraph): readonly string[] {
  const [, key = "", text = ""] = /^\s+(\S+)\s*(.*)$/.exec(line) ?? [];
  const read = KEYS.get(key);
  if (read === undefined) return [`"${key}" is no line of a food; write ${[...KEYS.keys()].join(", ")}.`];
  if (food.seen.has(key) && !LONG.has(key)) return [`${food.name} has two lines "${key}"; keep one.`];
  food.seen.add(key);
  return read(text.trim(), food);
}

function missing(food: Paragraph): readonly string[] {
  const lines = ["usda", "refuse"].filter((key) => !food.seen.has(key));
  const figures = NUTRIENT_NAMES.filter((name) => !food.figures.has(name));
  return [...lines, ...figures].map(
    (one) => `${food.name} says nothing of ${one}; write ? for a figure not known.`,
  );
}

const foodFrom = ({ name, also, ndb, figures, refuse, measures }: Paragraph): Food => ({
  name,
  also,
  ndb,
  label: null,
  madeOf: null,
  mayHold: [],
  per100: eachNutrient((nutrient) => figures.get(nutrient) ?? null),
  bounds: null,
  refuse,
  measures,
});

function paragraph(name: string, line: number): Paragraph {
  const empty = { also: [], measures: [], figures: new Map(), seen: new Set<string>() };
  return { name, line, ...empty, ndb: "", refuse: null, isWrong: false };
}

/** Cuts the text into foods and reads their lines. @param wrong is told every mistake */
function paragraphsOf(text: string, wrong: (line: number, sentence: string) => void): readonly Paragraph[] {
  const found: Paragraph[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    const food = found.at(-1);
    if (!/^\s/.test(line)) found.push(paragraph(line.trim(), index + 1));
    else if (food === undefined)
      wrong(index + 1, "This line belongs to no food; write the food's name above it.");
    else
      for (const sentence of readLine(line, food)) {
        food.isWrong = true;
        wrong(index + 1, sentence);
      }
  }
  return found;
}

/**
 * Reads the table of foods; its format stands at the top of recipes/foods/foods.txt.
 * @param file the name to put on mistakes
 */
export function readFoods(file: string, text: string): FoodsRead {
  const mistakes: Mistake[] = [];
  const wrong = (line: number, sentence: string): void =>
    void mistakes.push({ file, line, field: "", sentence });
  const table = new Map<string, Food>();
  const foods: Food[] = [];
  for (const one of paragraphsOf(text, wrong)) {
    const food = foodFrom(one);
    const names = new Map([food.name, ...food.also].map((name) => [normaliseFood(name), name]));
    const taken = [...names].flatMap(([plain, name]) => {
      const other = table.get(plain);
      return other === undefined
        ? []
        : [`"${name}" already stands for ${other.name}; a name means one food only.`];
    });
    const sentences = [
      // A figure that could not be read is not missing too: one mistake is told once.
      ...(one.isWrong ? [] : missing(one)),
      ...(names.has("") ? ["A name is empty here; write one or leave it out."] : []),
      ...taken,
    ];
    for (const sentence of sentences) wrong(one.line, sentence);
    if (one.isWrong || sentences.length > 0) continue;
    foods.push(food);
    for (const plain of names.keys()) table.set(plain, food);
  }
  return { table, foods, mistakes: mistakes.toSorted((a, b) => a.line - b.line) };
}
