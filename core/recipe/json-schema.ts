import { z } from "zod";
import { dietFile } from "../diet/diet-file.ts";
import { labelFile } from "../food/label-file.ts";
import { weekFile } from "../week/week-file.ts";
import { dishFile } from "./dish-file.ts";
import { kitchenFile, mealFile } from "./meal-file.ts";

const FILES = {
  diet: dietFile,
  dish: dishFile,
  kitchen: kitchenFile,
  label: labelFile,
  meal: mealFile,
  week: weekFile,
} as const;

/**
 * The shape of the recipe files for editors, as JSON Schema 2020-12 text by schema name ("dish").
 * It knows keys, kinds and lengths; what the texts say ("10-15 min") only the reader checks.
 */
export function recipeSchemas(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(FILES).map(([name, schema]): [string, string] => {
      return [name, `${JSON.stringify(z.toJSONSchema(schema, { io: "input" }), null, 2)}\n`];
    }),
  );
}
