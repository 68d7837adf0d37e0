import { readFile, readdir } from "node:fs/promises";
import { basename, join } from "node:path";
import type { Diet } from "../../core/diet/diet.ts";
import type { Larder } from "../../core/diet/groups.ts";
import { readDiet } from "../../core/diet/read-diet.ts";
import { readSwaps } from "../../core/food/read-swaps.ts";
import type { SwapRule } from "../../core/food/swap-rule.ts";
import { readGroups } from "../../core/diet/read-groups.ts";
import { ID } from "../../core/recipe/fields.ts";
import type { Mistake } from "../../core/recipe/mistake.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { loadFoods } from "./load-foods.ts";

const GROUPS = "foods/groups.txt";
const SHELF = "diets";
const ENDING = /\.ya?ml$/i;

const SWAPS = "foods/swaps.txt";

/** A mistake as one sentence. */
const told = ({ file, line, sentence }: Mistake): string => `${file}, line ${line}: ${sentence}`;

/**
 * What is known of foods. A list of groups with a mistake is not trusted: a food left out of one would count as free of it.
 * @param folder has foods.txt and groups.txt in foods/
 * Error: one sentence.
 */
export async function loadLarder(folder: string): Promise<Result<Larder, string>> {
  const foods = await loadFoods(folder);
  if (!foods.ok) return foods;
  const text = await readFile(join(folder, GROUPS), "utf8").catch(() => null);
  if (text === null) return err(`The list of groups, ${join(folder, GROUPS)}, cannot be read; put it back.`);
  const { groups, mistakes } = readGroups(GROUPS, text, foods.value);
  const [mistake] = mistakes;
  return mistake === undefined ? ok({ foods: foods.value, groups }) : err(told(mistake));
}

/**
 * What may stand in for a food by common practice. A table with a mistake is not trusted.
 * @param folder has swaps.txt in foods/
 * Error: one sentence.
 */
export async function loadSwaps(
  folder: string,
  { foods }: Larder,
): Promise<Result<readonly SwapRule[], string>> {
  const text = await readFile(join(folder, SWAPS), "utf8").catch(() => null);
  if (text === null) return err(`The table of swaps, ${join(folder, SWAPS)}, cannot be read; put it back.`);
  const { swaps, mistakes } = readSwaps(SWAPS, text, foods);
  const [mistake] = mistakes;
  return mistake === undefined ? ok(swaps) : err(told(mistake));
}

async function loadDiet(path: string, larder: Larder): Promise<Result<Diet, string>> {
  const name = basename(path);
  const id = name.replace(ENDING, "");
  const place = `${SHELF}/${name}`;
  if (!ID.test(id))
    return err(
      `"${name}" cannot be a diet's file name; use lower-case words joined by hyphens, like lamp-room.yaml.`,
    );
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null)
    return err(`The diet ${place} cannot be read; check that it is there and that you may open it.`);
  const { diet, mistakes } = readDiet(place, id, text, larder);
  const [mistake] = mistakes;
  if (mistake !== undefined) return err(told(mistake));
  return diet === null ? err(`The diet ${place} cannot be read.`) : ok(diet);
}

async function all(paths: readonly string[], larder: Larder): Promise<Result<readonly Diet[], string>> {
  const diets: Diet[] = [];
  for (const path of paths) {
    const diet = await loadDiet(path, larder);
    if (!diet.ok) return diet;
    diets.push(diet.value);
  }
  return ok(diets);
}

async function namesIn(folder: string): Promise<readonly string[]> {
  const names = await readdir(join(folder, SHELF)).catch(() => []);
  return names.filter((name) => ENDING.test(name)).toSorted();
}

/**
 * The diets that hold for a meal: those for every meal, and those that it names. A diet with a mistake is a refusal,
 * also where the meal does not name it, for it may hold for every meal.
 * @param folder has the shelf diets/
 * @param named the file stems that the meal names
 */
export async function dietsFor(
  folder: string,
  named: readonly string[],
  larder: Larder,
): Promise<Result<readonly Diet[], string>> {
  const names = await namesIn(folder);
  const diets = await all(
    names.map((name) => join(folder, SHELF, name)),
    larder,
  );
  if (!diets.ok) return diets;
  const missing = named.find((id) => !diets.value.some((diet) => diet.id === id));
  if (missing !== undefined)
    return err(
      noDiet(
        missing,
        diets.value.map(({ id }) => id),
      ),
    );
  return ok(diets.value.filter(({ id, isEveryMeal }) => isEveryMeal || named.includes(id)));
}

const noDiet = (word: string, known: readonly string[]): string =>
  `There is no diet called ${word}. ${known.length === 0 ? "There is none at all." : `There are: ${known.join(", ")}.`}`;

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
  const pathOf = (word: string): string => {
    const name = names[stems.indexOf(word)];
    return name === undefined ? word : join(folder, SHELF, name);
  };
  return all(words.map(pathOf), larder);
}
