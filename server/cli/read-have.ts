import { readFile } from "node:fs/promises";
import { readHouse, type HouseRead } from "../../core/shop/in-house.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

/** What is in the house by the file behind --have; nothing where none is named. Error: one sentence. */
export async function readHave(file: string | null): Promise<Result<HouseRead, string>> {
  if (file === null) return ok({ house: [], mistakes: [] });
  const text = await readFile(file, "utf8").catch(() => null);
  return text === null
    ? err(`${file} cannot be read. Name a file with what is in the house.`)
    : ok(readHouse(text));
}
