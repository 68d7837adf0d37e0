import { normaliseFood } from "../food/names.ts";
import type { Mistake } from "../recipe/mistake.ts";
import { listed, nearest } from "../recipe/nearest.ts";
import { readYaml, type WrittenFile } from "../recipe/read-yaml.ts";
import { sentenceOf, shapeMistakes } from "../recipe/shape-mistakes.ts";
import { groupsNaming } from "./read-groups.ts";
import { contradictions } from "./contradictions.ts";
import { dietId, type Diet, type DietName, type FoodRule, type ValueRule } from "./diet.ts";
import { dietFile, type DietFile } from "./diet-file.ts";
import type { Larder } from "./groups.ts";

interface Complaint {
  readonly path: readonly string[];
  readonly sentence: string;
}

type RuledEntry = Exclude<NonNullable<DietFile["foods"]>[string], { verdict: unknown }>;
type Entry = NonNullable<DietFile["foods"]>[string];

const isRuled = (entry: Entry): entry is RuledEntry => "rule" in entry;

/** What a name stands for, or why it stands for nothing. */
function resolve(said: string, also: readonly string[] | undefined, larder: Larder): DietName | string {
  const name = normaliseFood(said);
  const group = larder.groups.get(name);
  if (group !== undefined) return { said, kind: "group", group };
  const food = larder.foods.get(name);
  if (food !== undefined) return { said, kind: "food", food: food.name };
  if (also !== undefined || groupsNaming(larder.groups, name).length > 0)
    return { said, kind: "words", words: [name, ...(also ?? []).map(normaliseFood)] };
  const several = [
    ...new Set(
      [...larder.foods].flatMap(([one, { name: full }]) => (one.endsWith(` ${name}`) ? [full] : [])),
    ),
  ];
  if (several.length > 1)
    return `"${said}" may be ${listed(several.slice(0, 5), "or")}${several.length > 5 ? " and more" : ""}; write which, or the group.`;
  const known = [...larder.groups.values(), ...larder.foods.values()].map((one) => one.name);
  const meant = nearest(said, known);
  return meant === null
    ? `No food and no group is called "${said}"; if it has no other name, write also-called: [] to it.`
    : `No food and no group is called "${said}"; did you mean "${meant}"?`;
}

/** Collects what is wrong while names are looked up. */
interface Lookup {
  readonly larder: Larder;
  readonly complaints: Complaint[];
}

function lookUp(
  path: readonly string[],
  said: string,
  also: readonly string[] | undefined,
  { larder, complaints }: Lookup,
): readonly DietName[] {
  const name = resolve(said, also, larder);
  if (typeof name !== "string") return [name];
  complaints.push({ path, sentence: name });
  return [];
}

function foodRule(said: string, entry: Entry, lookup: Lookup): readonly FoodRule[] {
  const path = ["foods", said];
  const ruled = isRuled(entry) ? entry : null;
  const { verdict, allowance } = isRuled(entry) ? entry.rule : entry;
  const these = ruled?.these?.flatMap((one) => lookUp([...path, "these"], one, undefined, lookup)) ?? null;
  const conditioned = these !== null || ruled?.only !== undefined;
  if (verdict === "avoided" && conditioned)
    lookup.complaints.push({
      path,
      sentence: `"${said}" is avoided, so nothing of it can be allowed; write allowed, or take "only" and "these" away.`,
    });
  return lookUp(path, said, ruled?.["also-called"], lookup).map((name) => ({
    name,
    verdict,
    allowance,
    only: ruled?.only ?? null,
    these,
    because: ruled?.because ?? null,
  }));
}

function valueRules(limits: NonNullable<DietFile["limits"]>): readonly ValueRule[] {
  return limits.map((limit): ValueRule => {
    if ("rule" in limit) return { ...limit.rule, because: limit.because ?? null };
    return { ...limit, because: null };
  });
}

function dietFrom(id: string, file: DietFile, lookup: Lookup): Diet {
  return {
    id: dietId(id),
    name: file.diet,
    about: file.about,
    isEveryMeal: file["every-meal"] ?? false,
    listed: file["may-eat"] === "only what is listed" ? "only" : "but",
    foods: Object.entries(file.foods ?? {}).flatMap(([said, entry]) => foodRule(said, entry, lookup)),
    allergies: (file.allergies ?? []).flatMap((said) => lookUp(["allergies"], said, undefined, lookup)),
    values: valueRules(file.limits ?? []),
  };
}

function tied(written: WrittenFile, { path, sentence }: Complaint): Mistake {
  return { file: written.file, line: written.lineOf(path), field: path.join("."), sentence };
}

/**
 * Reads one diet; null with its mistakes when there are any: half a diet is no diet.
 * @param file the name to put on mistakes
 * @param id the file's stem
 */
export function readDiet(
  file: string,
  id: string,
  text: string,
  larder: Larder,
): { readonly diet: Diet | null; readonly mistakes: readonly Mistake[] } {
  const { written, mistakes } = readYaml(file, text);
  if (written === null) return { diet: null, mistakes };
  const shape = dietFile.safeParse(written.value, { error: sentenceOf });
  if (!shape.success) return { diet: null, mistakes: [...mistakes, ...shapeMistakes(shape.error, written)] };
  const lookup: Lookup = { larder, complaints: [] };
  const diet = dietFrom(id, shape.data, lookup);
  const own = contradictions([diet]).map((sentence) => ({ path: [], sentence }));
  const all = [...mistakes, ...[...lookup.complaints, ...own].map((complaint) => tied(written, complaint))];
  return { diet: all.length === 0 ? diet : null, mistakes: all };
}
