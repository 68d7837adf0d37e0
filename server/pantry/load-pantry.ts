import { readFile, readdir } from "node:fs/promises";
import { join } from "node:path";
import type { Mistake } from "../../core/recipe/mistake.ts";
import { LONGEST_FILE } from "../../core/recipe/read-yaml.ts";
import { SHELVES, readPantry } from "../../core/recipe/read-pantry.ts";
import type { PantryContents, PantryFile, Shelf } from "../../core/recipe/read-pantry.ts";

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

/**
 * Reads a folder with the shelves kitchens/, dishes/ and meals/. Every mistake in a file becomes a sentence;
 * the other recipes still load. Rejects only when a shelf itself cannot be listed.
 */
export async function loadPantry(folder: string): Promise<PantryContents> {
  const names = await Promise.all(
    SHELVES.map(async (shelf) => (await namesOn(folder, shelf)).map((name) => ({ shelf, name }))),
  );
  const loaded = await Promise.all(names.flat().map(({ shelf, name }) => load(folder, shelf, name)));
  const contents = readPantry(loaded.flatMap((one) => (one.state === "read" ? [one.file] : [])));
  const unreadable = loaded.flatMap((one) => (one.state === "unreadable" ? [one.mistake] : []));
  return { ...contents, mistakes: [...unreadable, ...contents.mistakes] };
}
