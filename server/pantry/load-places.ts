import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { readPlaces, type Places } from "../../core/shop/places.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

/** Where the table of places lies in a folder of recipes. */
const PLACE = "foods/places.txt";

/**
 * Where foods are in the shop.
 * @param folder has the table in foods/
 * Error: one sentence with the first mistake, or that there is no table.
 */
export async function loadPlaces(folder: string): Promise<Result<Places, string>> {
  const text = await readFile(join(folder, PLACE), "utf8").catch(() => null);
  if (text === null) return err(`The table of places, ${join(folder, PLACE)}, cannot be read; put it back.`);
  const { places, mistakes } = readPlaces(PLACE, text);
  const [mistake] = mistakes;
  return mistake === undefined
    ? ok(places)
    : err(`${mistake.file}, line ${mistake.line}: ${mistake.sentence}`);
}
