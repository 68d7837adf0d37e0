import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { FoodTable } from "../../core/food/food.ts";
import { readFoods } from "../../core/food/read-foods.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { inProgram } from "../cli/in-program.ts";

/** Where the table of foods lies in a folder of recipes. */
const PLACE = "foods/foods.txt";

/**
 * The table of foods. Figures of a table with a mistake are not trusted: a line in the wrong place may be another food's.
 * @param folder has the table in foods/
 * Error: one sentence with the first mistake, or that there is no table.
 */
export async function loadFoods(folder: string): Promise<Result<FoodTable, string>> {
  const text = await readFile(join(folder, PLACE), "utf8").catch(() => null);
  if (text === null) return err(`The table of foods, ${join(folder, PLACE)}, cannot be read; put it back.`);
  const { table, mistakes } = readFoods(PLACE, text);
  const [mistake] = mistakes;
  return mistake === undefined
    ? ok(table)
    : err(`${mistake.file}, line ${mistake.line}: ${mistake.sentence}`);
}

/**
 * The table of foods that a cook's own folder of recipes goes by: its own, else the program's; null where neither can
 * be read without a mistake.
 */
export async function foodsFor(folder: string): Promise<FoodTable | null> {
  const own = await loadFoods(folder);
  if (own.ok) return own.value;
  const shipped = await loadFoods(inProgram("recipes"));
  return shipped.ok ? shipped.value : null;
}
