import { readFile, readdir } from "node:fs/promises";
import { join } from "node:path";
import type { FoodTable } from "../../core/food/food.ts";
import type { Mistake } from "../../core/recipe/mistake.ts";
import { LONGEST_FILE } from "../../core/recipe/read-yaml.ts";
import { SHELVES, readPantry } from "../../core/recipe/read-pantry.ts";
import type { PantryContents, PantryFile, Shelf } from "../../core/recipe/read-pantry.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { inProgram } from "../cli/in-program.ts";
import { foodsFor, loadFoods } from "./load-foods.ts";

type Loaded =
  | { readonly state: "read"; readonly file: PantryFile }
  | { readonly state: "unreadable"; readonly mistake: Mistake };

const codeOf = (error: unknown): string => {
  return error instanceof Error && "code" in error ? String(error.code) : String(error);
};

/** The recipe files of one shelf. A shelf that does not exist is an empty one. */
async function namesOn(folder: string, shelf: Shelf): Promise<readonly string[]> {
  try {
    const entries = await readdir(join(folder, shelf), { withFileTypes: true });
    return entries
      .filter((entry) => !entry.isDirectory() && /\.ya?ml$/i.test(entry.name))
      .map(({ name }) => name);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return [];
    throw error;
  }
}

async function load(folder: string, shelf: Shelf, name: string): Promise<Loaded> {
  const unreadable = (why: string): Loaded => {
    const sentence = `This file cannot be read (${why}); check that it is there and that you may open it.`;
    return { state: "unreadable", mistake: { file: `${shelf}/${name}`, line: 1, field: "", sentence } };
  };
  try {
    const bytes = await readFile(join(folder, shelf, name));
    // A megabyte need not become text: the reader refuses by length, and four bytes a letter are the most.
    const text = bytes
      .subarray(0, LONGEST_FILE * 4 + 4)
      .toString("utf8")
      .replace(/^\uFEFF/, "");
    return { state: "read", file: { shelf, name, text } };
  } catch (error) {
    return unreadable(codeOf(error));
  }
}

/** The files of some shelves, and what could not be opened. Rejects only when a shelf itself cannot be listed. */
async function loadShelves(folder: string, shelves: readonly Shelf[]): Promise<readonly Loaded[]> {
  const names = await Promise.all(
    shelves.map(async (shelf) => (await namesOn(folder, shelf)).map((name) => ({ shelf, name }))),
  );
  return Promise.all(names.flat().map(({ shelf, name }) => load(folder, shelf, name)));
}

const filesIn = (loaded: readonly Loaded[]): readonly PantryFile[] =>
  loaded.flatMap((one) => (one.state === "read" ? [one.file] : []));
const unreadableIn = (loaded: readonly Loaded[]): readonly Mistake[] =>
  loaded.flatMap((one) => (one.state === "unreadable" ? [one.mistake] : []));

/**
 * Reads a folder with the shelves kitchens/, labels/, dishes/ and meals/. Every mistake in a file becomes a sentence;
 * the other recipes still load. Rejects only when a shelf itself cannot be listed.
 */
export async function loadPantry(folder: string): Promise<PantryContents> {
  const loaded = await loadShelves(folder, SHELVES);
  const contents = readPantry(filesIn(loaded), await foodsFor(folder));
  return { ...contents, mistakes: [...unreadableIn(loaded), ...contents.mistakes] };
}

/**
 * The table of foods with the labels of a folder of recipes in it.
 * Error: one sentence with the first mistake in the table or in a label: its figures cannot be trusted, and those of
 * the table are not what is in the cook's package.
 */
export async function loadLabelled(folder: string): Promise<Result<FoodTable, string>> {
  const table = await loadFoods(inProgram("recipes"));
  if (!table.ok) return table;
  const loaded = await loadShelves(folder, ["labels"]);
  const contents = readPantry(filesIn(loaded), table.value);
  const [mistake] = [...unreadableIn(loaded), ...contents.mistakes];
  return mistake === undefined
    ? ok(contents.foods ?? table.value)
    : err(`${mistake.file}, line ${mistake.line}: ${mistake.sentence}`);
}
