import { err, ok, type Result } from "../units/result.ts";
import type { Food, FoodTable } from "./food.ts";
import { normaliseFood } from "./names.ts";

/** Words for a size or for being ready to eat: they change no figure. */
const LOOSE = /\b(?:extra|small|medium|large|big|ripe)\b/gi;
/** "water for the onion": what it is for changes no figure either. */
const PURPOSE = /\s+for\s.*$/i;

/**
 * Words that make another food of the one they stand beside: cooked lentils hold a third of what dry ones do. Where a
 * recipe says one, only a food named so will do.
 */
const CHANGING: ReadonlySet<string> = new Set(
  (
    "baked blanched boiled braised canned cooked dried fried frozen pickled poached pureed roasted salted smoked " +
    "soaked sprouted steamed stewed tinned"
  ).split(" "),
);

const UNSALTED = /\b(?:no|without|less|low|reduced)(?:[\s-]+added)?[\s-]+(?:salt|sodium)\b|\bunsalted\b/i;

/** Put up in salt unless its name says otherwise; whatever has a label may be. */
const isPreserved = ({ name, label }: Food): boolean =>
  (label !== null || /\b(?:canned|salted|salsa|sauce|broth|pickle)\b/.test(name)) && !UNSALTED.test(name);

const words = (text: string): readonly string[] => text.toLowerCase().split(/[^\p{L}]+/u);

/** The names that an ingredient may have in the table, the fullest first. */
function namesOf(item: string, preparation: readonly string[]): readonly string[] {
  const bare = item.replace(PURPOSE, "").replace(LOOSE, " ");
  return [item, bare].flatMap((name) => [
    ...preparation.flatMap((part) => [`${name} ${part}`, `${part} ${name}`]),
    ...(UNSALTED.test(preparation.join(" ")) ? [`unsalted ${name}`] : []),
  ]);
}

const firstOf = (table: FoodTable, names: readonly string[]): Food | null =>
  names.map((name) => table.get(normaliseFood(name))).find((food) => food !== undefined) ?? null;

/** So many are offered at most. */
const MOST_OFFERS = 4;

/** What a cook may have meant, the foods whose names end so first; to choose is for the cook alone. */
function noneCalled(table: FoodTable, item: string): string {
  const asked = normaliseFood(item);
  const having = (isNear: (name: string) => boolean): readonly string[] =>
    [...table].flatMap(([name, food]) => (isNear(` ${name} `) ? [food.name] : []));
  const near = [
    ...having((name) => name.endsWith(` ${asked} `)),
    ...having((name) => name.includes(` ${asked} `)),
  ];
  const offers = [...new Set(asked === "" ? [] : near)].slice(0, MOST_OFFERS);
  const none = `No food in the table is called "${item}"`;
  return offers.length === 0 ? `${none}.` : `${none}; it has ${offers.join(", ")}.`;
}

/**
 * The food of the table that an ingredient is, by its exact name; one that is merely near is never taken.
 * @param item as in the recipe: "red lentils", "ripe tomatoes"
 * @param preparation as in the recipe: "no salt added, drained"; null where there is none
 * Error: one sentence that says why it is none of them.
 */
export function findFood(table: FoodTable, item: string, preparation: string | null): Result<Food, string> {
  const parts =
    preparation === null
      ? []
      : preparation
          .split(",")
          .map((part) => part.trim())
          .filter((part) => part !== "");
  const prepared = firstOf(table, namesOf(item, parts));
  if (prepared !== null) return ok(prepared);
  const said = new Set(words(item));
  const change = parts.flatMap(words).find((word) => CHANGING.has(word) && !said.has(word));
  if (change !== undefined)
    return err(`The recipe says "${change}", and the table has no ${change} food called "${item}".`);
  const food = firstOf(table, [
    item,
    item.replace(PURPOSE, ""),
    item.replace(PURPOSE, "").replace(LOOSE, " "),
  ]);
  if (food === null) return err(noneCalled(table, item));
  return UNSALTED.test(parts.join(" ")) && isPreserved(food)
    ? err(`The recipe says without salt, and the table has only ${food.name}.`)
    : ok(food);
}
