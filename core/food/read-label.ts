import type { FieldPath, Mistake } from "../recipe/mistake.ts";
import { fieldName } from "../recipe/mistake.ts";
import { readYaml, type WrittenFile } from "../recipe/read-yaml.ts";
import { sentenceOf, shapeMistakes } from "../recipe/shape-mistakes.ts";
import { add, div, mul, ratio, type Rational } from "../units/rational.ts";
import type { Bounds, Food, FoodTable } from "./food.ts";
import { labelBounds, readLabelFigure, type LabelFigure } from "./label-figure.ts";
import { labelFile, type LabelFile } from "./label-file.ts";
import type { Printed, Rounding } from "./label-rounding-table.ts";
import { misprints, type Told } from "./label-sense.ts";
import { readServing, sharedMeasures, type Serving } from "./label-serving.ts";
import { namedFood } from "./named-food.ts";
import { normaliseFood } from "./names.ts";
import { eachNutrient, type Nutrient } from "./nutrients.ts";

/** What came of one label; null where there is any mistake. */
export interface LabelRead {
  readonly food: Food | null;
  readonly mistakes: readonly Mistake[];
}

/** What came of all labels. */
export interface LabelsRead {
  readonly foods: readonly Food[];
  readonly mistakes: readonly Mistake[];
  /** The names on labels with mistakes, as `normaliseFood` gives them: nothing else may stand in for these. */
  readonly broken: ReadonlySet<string>;
}

interface Finding {
  readonly path: FieldPath;
  readonly sentence: string;
}

type Figures = ReadonlyMap<Printed, LabelFigure>;

const HUNDRED = ratio(100);
/** Sodium in a gram of salt, in milligrams: Regulation (EU) 1169/2011, annex I, point 11. */
const SODIUM_OF_SALT = ratio(400);

const scaled = ({ low, high }: Bounds, by: Rational): Bounds => ({ low: mul(low, by), high: mul(high, by) });

const roundingOf = (file: LabelFile): Rounding =>
  file.rounding ?? ((file.per ?? "serving") === "serving" ? "us" : "eu");

function figuresOf(file: LabelFile): { readonly figures: Figures; readonly findings: readonly Finding[] } {
  const figures = new Map<Printed, LabelFigure>();
  const findings: Finding[] = [];
  for (const [name, text] of Object.entries(file.values) as readonly [Printed, string | undefined][]) {
    if (text === undefined) continue;
    const read = readLabelFigure(name, text);
    if (read.ok) figures.set(name, read.value);
    else findings.push({ path: ["values", name], sentence: read.error });
  }
  if (figures.size + findings.length === 0)
    findings.push({ path: ["values"], sentence: "This label tells no value; write at least one." });
  return { figures, findings };
}

/** What the label tells in 100 g. @param by what makes 100 g of what it was printed for */
const toldIn100 = (figures: Figures, rounding: Rounding, by: Rational): Told =>
  new Map([...figures].map(([name, one]) => [name, scaled(labelBounds(name, one, rounding), by)]));

/**
 * The table's carbohydrate has the fibre in it and the EU's has not: without a figure for the fibre it is not known.
 * Sodium is the label's own, or what its salt holds.
 */
function asInTable(
  told: ReadonlyMap<Printed, Bounds>,
  isEuropean: boolean,
  nutrient: Nutrient,
): Bounds | null {
  const own = told.get(nutrient) ?? null;
  if (nutrient === "sodium" && own === null) {
    const salt = told.get("salt");
    return salt === undefined ? null : scaled(salt, SODIUM_OF_SALT);
  }
  if (nutrient !== "carbohydrate" || !isEuropean || own === null) return own;
  const fibre = told.get("fibre");
  return fibre === undefined ? null : { low: add(own.low, fibre.low), high: add(own.high, fibre.high) };
}

function foodFrom(
  place: string,
  file: LabelFile,
  figures: Figures,
  serving: Serving,
  like: Food | null,
): Food {
  const by = div(HUNDRED, serving.grams);
  const isEuropean = roundingOf(file) === "eu";
  const told = toldIn100(figures, roundingOf(file), by);
  const printed = toldIn100(figures, "exact", by);
  return {
    name: file.label,
    also: file.also ?? [],
    ndb: null,
    label: place,
    madeOf: file["made-of"] ?? null,
    mayHold: file["may-hold"] ?? [],
    per100: eachNutrient((nutrient) => asInTable(printed, isEuropean, nutrient)?.high ?? null),
    bounds: eachNutrient((nutrient) => asInTable(told, isEuropean, nutrient)),
    refuse: like?.refuse ?? null,
    measures: sharedMeasures(serving.measures, like),
  };
}

const located = (written: WrittenFile, { path, sentence }: Finding): Mistake => ({
  file: written.file,
  line: written.lineOf(path),
  field: fieldName(path),
  sentence,
});

function likeOf(
  file: LabelFile,
  table: FoodTable,
): { readonly food: Food | null; readonly findings: readonly Finding[] } {
  if (file.like === undefined) return { food: null, findings: [] };
  const named = namedFood(table, file.like);
  return named.ok
    ? { food: named.value, findings: [] }
    : { food: null, findings: [{ path: ["like"], sentence: named.error }] };
}

function judged(
  place: string,
  file: LabelFile,
  table: FoodTable,
): { readonly food: Food | null; readonly findings: readonly Finding[] } {
  const like = likeOf(file, table);
  const { figures, findings } = figuresOf(file);
  const names = [file.label, ...(file.also ?? [])].some((name) => normaliseFood(name) === "")
    ? [{ path: ["label"], sentence: "A name here has no letters; write the food as recipes call it." }]
    : [];
  const serving = like.findings.length > 0 ? null : readServing(file, like.food);
  const untold: readonly Finding[] =
    serving?.ok === false ? [{ path: ["serving"], sentence: serving.error }] : [];
  const early = [...names, ...like.findings, ...untold, ...findings];
  if (early.length > 0 || serving?.ok !== true) return { food: null, findings: early };
  const told = toldIn100(figures, roundingOf(file), div(HUNDRED, serving.value.grams));
  const wrong = misprints(told, roundingOf(file) === "eu").map(({ value, sentence }) => ({
    path: ["values", value],
    sentence,
  }));
  return {
    food: wrong.length > 0 ? null : foodFrom(place, file, figures, serving.value, like.food),
    findings: wrong,
  };
}

/** The names that a label has, even where much of it cannot be read. */
function namesIn(value: unknown): readonly string[] {
  const at = (key: string): unknown =>
    typeof value === "object" && value !== null ? Reflect.get(value, key) : null;
  const also = at("also");
  return [at("label"), ...(Array.isArray(also) ? (also as readonly unknown[]) : [])].filter(
    (name) => typeof name === "string",
  );
}

interface OneRead extends LabelRead {
  readonly names: readonly string[];
  readonly lineOf: WrittenFile["lineOf"];
}

function readOne(place: string, text: string, table: FoodTable): OneRead {
  const { written, mistakes } = readYaml(place, text);
  if (written === null) return { food: null, mistakes, names: [], lineOf: () => 1 };
  const names = namesIn(written.value).map(normaliseFood);
  const shape = labelFile.safeParse(written.value, { error: sentenceOf });
  const told = shape.success ? judged(place, shape.data, table) : { food: null, findings: [] };
  const all = [
    ...mistakes,
    ...(shape.success ? [] : shapeMistakes(shape.error, written)),
    ...told.findings.map((finding) => located(written, finding)),
  ].toSorted((a, b) => a.line - b.line);
  return { food: all.length === 0 ? told.food : null, mistakes: all, names, lineOf: written.lineOf };
}

/**
 * Reads one label.
 * @param place the name to put on mistakes and on the food: "labels/plain-oat-drink.yaml"
 * @param table what `like` may name
 */
export function readLabel(place: string, text: string, table: FoodTable): LabelRead {
  const { food, mistakes } = readOne(place, text, table);
  return { food, mistakes };
}

/** Reads all labels; a name that two of them have belongs to the first. */
export function readLabels(
  files: readonly { readonly place: string; readonly text: string }[],
  table: FoodTable,
): LabelsRead {
  const owner = new Map<string, string>();
  const broken = new Set<string>();
  const read = files.map(({ place, text }) => {
    const one = readOne(place, text, table);
    const taken = [...new Set(one.names)].flatMap((name): readonly Mistake[] => {
      const other = owner.get(name);
      if (other === undefined) owner.set(name, place);
      if (other === undefined || one.food === null) return [];
      const sentence = `"${name}" is already the name of the food in ${other}; give one of them another name.`;
      return [{ file: place, line: one.lineOf(["label"]), field: "label", sentence }];
    });
    const food = taken.length === 0 ? one.food : null;
    if (food === null) for (const name of one.names) broken.add(name);
    return { food, mistakes: [...one.mistakes, ...taken] };
  });
  return {
    foods: read.flatMap(({ food }) => (food === null ? [] : [food])),
    mistakes: read.flatMap(({ mistakes }) => mistakes),
    broken,
  };
}

/**
 * The table with the labels in it: a label takes the names that it has, and no others. Behind the names of a label with
 * a mistake there is no food: the table's figures are not what the cook's package holds.
 */
export function withLabels(table: FoodTable, { foods, broken }: Omit<LabelsRead, "mistakes">): FoodTable {
  const own = foods.flatMap((food) =>
    [food.name, ...food.also].map((name): readonly [string, Food] => [normaliseFood(name), food]),
  );
  return new Map([...[...table].filter(([name]) => !broken.has(name)), ...own]);
}
