import { listed, nearest } from "../recipe/nearest.ts";
import { err, ok, type Result } from "../units/result.ts";
import type { Food, FoodTable } from "./food.ts";
import { normaliseFood } from "./names.ts";

/** So many are offered at most. */
const MOST_OFFERS = 4;

/** The foods that have all the words of the name in theirs, those that end so first. */
function having(table: FoodTable, asked: string): readonly string[] {
  const words = asked.split(" ");
  const near = [...table].filter(([name]) => {
    const known = new Set(name.split(" "));
    return words.every((word) => known.has(word));
  });
  const ending = near.filter(([name]) => name.endsWith(` ${asked}`));
  return [...new Set([...ending, ...near].map(([, food]) => food.name))];
}

function like(table: FoodTable, asked: string): readonly string[] {
  const best = nearest(asked, [...table.keys()]);
  const food = best === null ? undefined : table.get(best);
  return food === undefined ? [] : [food.name];
}

/**
 * The food of the table or of a label that a name means, by this name exactly.
 * Error: one sentence for a name that is none, or may be several, with the nearest ones.
 */
export function namedFood(table: FoodTable, name: string): Result<Food, string> {
  const asked = normaliseFood(name);
  const food = table.get(asked);
  if (food !== undefined) return ok(food);
  const found = asked === "" ? [] : having(table, asked);
  if (found.length > 1)
    return err(
      `"${name}" may be ${listed(found.slice(0, MOST_OFFERS), "or")}${found.length > MOST_OFFERS ? ", and more" : ""}; write one of them.`,
    );
  const [offer] = found.length === 1 ? found : like(table, asked);
  return err(
    offer === undefined
      ? `There is no food called "${name}" in the table or on a label.`
      : `There is no food called "${name}"; did you mean "${offer}"?`,
  );
}
