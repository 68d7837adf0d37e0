import { readFile, readdir } from "node:fs/promises";
import { basename, join } from "node:path";
import type { Diet } from "../../core/diet/diet.ts";
import type { Larder } from "../../core/diet/groups.ts";
import { readDiet } from "../../core/diet/read-diet.ts";
import { readGroups } from "../../core/diet/read-groups.ts";
import type { FoodTable } from "../../core/food/food.ts";
import { readSwaps } from "../../core/food/read-swaps.ts";
import type { SwapRule } from "../../core/food/swap-rule.ts";
import { ID } from "../../core/recipe/fields.ts";
import type { Mistake } from "../../core/recipe/mistake.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { inProgram } from "../cli/in-program.ts";

const GROUPS = "foods/groups.txt";
const SWAPS = "foods/swaps.txt";
const SHELF = "diets";
const ENDING = /\.ya?ml$/i;

/** A mistake as one sentence. */
export const toldMistake = ({ file, line, sentence }: Mistake): string =>
  `${file}, line ${line}: ${sentence}`;

async function textOf(place: string): Promise<Result<string, string>> {
  const text = await readFile(join(inProgram("recipes"), place), "utf8").catch(() => null);
  return text === null ? err(`${join(inProgram("recipes"), place)} cannot be read; put it back.`) : ok(text);
}

/**
 * What is known of foods. A list of groups with a mistake is not trusted: a food left out of one would count as free of it.
 * @param foods the table, perhaps with the cook's labels in it
 * Error: one sentence.
 */
export async function loadLarder(foods: FoodTable): Promise<Result<Larder, string>> {
  const text = await textOf(GROUPS);
  if (!text.ok) return text;
  const { groups, mistakes } = readGroups(GROUPS, text.value, foods);
  const [mistake] = mistakes;
  return mistake === undefined ? ok({ foods, groups }) : err(toldMistake(mistake));
}

/**
 * What may stand in for a food by common practice. A table with a mistake is not trusted.
 * Error: one sentence.
 */
export async function loadSwaps({ foods }: Larder): Promise<Result<readonly SwapRule[], string>> {
  const text = await textOf(SWAPS);
  if (!text.ok) return text;
  const { swaps, mistakes } = readSwaps(SWAPS, text.value, foods);
  const [mistake] = mistakes;
  return mistake === undefined ? ok(swaps) : err(toldMistake(mistake));
}

/** What came of diets' files. */
export interface DietsRead {
  readonly diets: readonly Diet[];
  readonly mistakes: readonly Mistake[];
}

async function loadDiet(path: string, larder: Larder): Promise<DietsRead> {
  const name = basename(path);
  const id = name.replace(ENDING, "");
  const file = `${SHELF}/${name}`;
  const wrong = (sentence: string): DietsRead => ({
    diets: [],
    mistakes: [{ file, line: 1, field: "", sentence }],
  });
  if (!ID.test(id))
    return wrong(
      `"${name}" cannot be a file name here; use lower-case words joined by hyphens, like lamp-room.yaml.`,
    );
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null)
    return wrong("This diet cannot be read; check that it is there and that you may open it.");
  const { diet, mistakes } = readDiet(file, id, text, larder);
  return { diets: diet === null ? [] : [diet], mistakes };
}

async function all(paths: readonly string[], larder: Larder): Promise<DietsRead> {
  const read = await Promise.all(paths.map((path) => loadDiet(path, larder)));
  return { diets: read.flatMap(({ diets }) => diets), mistakes: read.flatMap(({ mistakes }) => mistakes) };
}

async function namesIn(folder: string): Promise<readonly string[]> {
  const names = await readdir(join(folder, SHELF)).catch(() => []);
  return names.filter((name) => ENDING.test(name)).toSorted();
}

/** The diets of a folder of recipes, in its shelf diets/. */
export const loadDiets = async (folder: string, larder: Larder): Promise<DietsRead> =>
  all(
    (await namesIn(folder)).map((name) => join(folder, SHELF, name)),
    larder,
  );

const noDiet = (word: string, known: readonly string[]): string =>
  `There is no diet called ${word}. ${known.length === 0 ? "There is none at all." : `There are: ${known.join(", ")}.`}`;

/**
 * The diets that hold for a meal: those for every meal, and those that it names. A diet with a mistake is a refusal,
 * also where the meal does not name it, for it may hold for every meal.
 * @param named the file stems that the meal names
 */
export function dietsHolding(
  { diets, mistakes }: DietsRead,
  named: readonly string[],
): Result<readonly Diet[], string> {
  const [mistake] = mistakes;
  if (mistake !== undefined) return err(toldMistake(mistake));
  const missing = named.find((id) => !diets.some((diet) => diet.id === id));
  if (missing !== undefined) {
    const known = diets.map(({ id }) => id);
    return err(noDiet(missing, known));
  }
  return ok(diets.filter(({ id, isEveryMeal }) => isEveryMeal || named.includes(id)));
}

/**
 * The diets that a command names.
 * @param words file stems in diets/ of the folder, or paths of files
 */
export async function dietsNamed(
  folder: string,
  words: readonly string[],
  larder: Larder,
): Promise<Result<readonly Diet[], string>> {
  const names = await namesIn(folder);
  const stems = names.map((name) => name.replace(ENDING, ""));
  const missing = words.find((word) => !ENDING.test(word) && !stems.includes(word));
  if (missing !== undefined) return err(noDiet(missing, stems));
  const read = await all(
    words.map((word) => {
      const name = names[stems.indexOf(word)];
      return name === undefined ? word : join(folder, SHELF, name);
    }),
    larder,
  );
  const [mistake] = read.mistakes;
  return mistake === undefined ? ok(read.diets) : err(toldMistake(mistake));
}
