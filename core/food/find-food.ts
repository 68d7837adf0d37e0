import { err, ok, type Result } from "../units/result.ts";
import { changeIn } from "./changing-words.ts";
import type { Food, FoodTable } from "./food.ts";
import { normaliseFood } from "./names.ts";

/** Words for a size or for being ready to eat: they change no figure. */
const LOOSE = /\b(?:extra|small|medium|large|big|ripe)\b/gi;
/** "water for the onion": what it is for changes no figure either. */
const PURPOSE = /\s+for\s.*$/i;

const UNSALTED = /\b(?:no|without|less|low|reduced)(?:[\s-]+added)?[\s-]+(?:salt|sodium)\b|\bunsalted\b/i;

/** Put up in salt unless its name says otherwise; whatever has a label may be. */
const isPreserved = ({ name, label }: Food): boolean =>
  (label !== null || /\b(?:canned|salted|salsa|sauce|broth|pickle)\b/.test(name)) && !UNSALTED.test(name);

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

/** Put up as it is sold, so that its figures are of that. */
const PUT_UP =
  /\b(?:canned|capers|olive|sauerkraut|pickle|feta|mozzarella|paste|puree|sauce|salsa|horseradish)\b/;
/** What is nothing new of such a food: capers lie in brine by nature. */
const PUTTING_UP = /\b(?:bottled|brined?|canned|cans?|jarred|jars?|juice|pickled|tinned|tins?)\b/;

const notSo = (item: string, change: string): string =>
  /\s/.test(change)
    ? `The recipe says "${change}", and the table has no "${item}" like that.`
    : `The recipe says "${change}", and the table has no ${change} food called "${item}".`;

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
  const food = firstOf(table, [
    item,
    item.replace(PURPOSE, ""),
    item.replace(PURPOSE, "").replace(LOOSE, " "),
  ]);
  const change = changeIn(item, parts);
  const isByNature = food !== null && PUT_UP.test(food.name);
  if (change !== null && !(isByNature && PUTTING_UP.test(change))) return err(notSo(item, change));
  if (food === null) return err(noneCalled(table, item));
  return UNSALTED.test(parts.join(" ")) && isPreserved(food)
    ? err(`The recipe says without salt, and the table has only ${food.name}.`)
    : ok(food);
}
