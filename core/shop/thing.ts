import type { Food, FoodTable } from "../food/food.ts";
import { foodAsSold, type Told } from "../food/ingredient-food.ts";
import { normaliseFood, singularOf } from "../food/names.ts";
import type { Measured } from "../units/amount.ts";
import { findUnit } from "../units/unit.ts";
import { PARTS, type Part } from "./part-table.ts";

/** What is asked for in the shop. */
export interface Thing {
  /** Equal for what is one thing to buy. */
  readonly key: string;
  /** In the cook's words: "red lentils", "garlic"; for a part the whole: "lemon". */
  readonly name: string;
  /** Of the whole, where only a part is wanted; null: the table does not know it. */
  readonly food: Food | null;
  /** What is wanted of it, and the food that this part is; null: all of it. */
  readonly part: { readonly of: Part; readonly food: Food } | null;
  /** What to look for in the shop: "large", "no salt added". */
  readonly notes: readonly string[];
}

const NUMBER_OF_WATER = "14411";
const WATER =
  /^(?:(?:cold|cool|hot|warm|lukewarm|tepid|boiling|boiled|ice|iced|tap|drinking|cooking|pasta) )*water$/;

const PURPOSE = /\s+for\s.*$/i;
const SIZE = /\b(?:extra[\s-]large|small|medium|large|big)\b/gi;
/** The table may have one food for onions of every colour, and one for cumin ground or whole; who shops sees two. */
const KINDS = /\b(?:red|yellow|white|green|brown|black|purple|golden|pink|smoked|sweet|hot|ground)\b/g;
const SALTLESS =
  /\b(?:no|without|less|low|reduced)(?:[\s-]+added)?[\s-]+(?:salt|sodium|sugar)\b|\bun(?:salt|sweeten)ed\b/i;
/** Words of a preparation that are done before it is sold. */
const SOLD_SO =
  /\b(?:canned|tinned|bottled|jarred|dry|dried|frozen|cooked|smoked|salted|pickled|roasted)\b/gi;
/** Words of a preparation that tell which to choose; "chopped" tells what comes after. */
const CHOICE = /\b(?:ripe|unripe|firm|of one size|young)\b|\b(?:inch|cm)[\s-]+(?:piece|length|chunk)\b/i;

const partsOf = (preparation: string | null): readonly string[] =>
  preparation === null ? [] : preparation.split(",").map((part) => part.trim());

const found = (text: string, pattern: RegExp): readonly string[] =>
  (text.toLowerCase().match(pattern) ?? []).map((word) => word.replace("tinned", "canned"));

/** Which to choose of it, in the recipe's words. */
function notesOf(item: string, preparation: string | null): readonly string[] {
  const isAdvice = (part: string): boolean =>
    SALTLESS.test(part) || CHOICE.test(part) || found(part, SOLD_SO).length > 0;
  return [...found(item, SIZE), ...partsOf(preparation).filter(isAdvice)];
}

/** What makes another thing to buy of a food that the table does not know. */
function soldAs(preparation: string | null): readonly string[] {
  const parts = partsOf(preparation);
  const states = parts.flatMap((part) => found(part, SOLD_SO)).toSorted();
  return [...states, ...parts.filter((part) => SALTLESS.test(part)).map(normaliseFood)];
}

/** Without what it is for and how large it is: "flour for rolling" is flour. */
function bareName(item: string): string {
  const bare = item.replace(PURPOSE, "").replace(SIZE, " ").replace(/\s+/g, " ").trim();
  return bare === "" ? item : bare;
}

/** Words that name the part an amount counts: "garlic cloves" are garlic. */
function withoutUnit(name: string, food: Food): string {
  const words = name.split(" ");
  const unit = words.length < 2 ? null : findUnit(words.at(-1) ?? "");
  const isPart = unit !== null && food.measures.some((measure) => measure.unit === unit);
  return isPart ? words.slice(0, -1).join(" ") : name;
}

/** "3 garlic cloves" are three cloves, whatever the number stands before. */
export function inNamedUnit(amount: Measured, item: string, food: Food | null): Measured {
  const unit = amount.unit === "piece" ? findUnit(item.split(" ").at(-1) ?? "") : null;
  const isKnown = unit !== null && food?.measures.some((measure) => measure.unit === unit) === true;
  return isKnown ? { ...amount, unit } : amount;
}

function known(food: Food, item: string, table: FoodTable): Omit<Thing, "notes"> {
  const part = PARTS.get(food.name);
  if (part !== undefined) {
    const whole = table.get(normaliseFood(part.whole)) ?? null;
    const key = whole?.name ?? normaliseFood(part.whole);
    return { key, name: part.whole, food: whole, part: { of: part, food } };
  }
  const name = withoutUnit(bareName(item), food);
  const own = new Set(food.name.toLowerCase().split(" "));
  const kinds = found(name, KINDS).filter((kind) => !own.has(kind));
  return { key: [food.name, ...kinds].join(", "), name, food, part: null };
}

/**
 * What an ingredient is in the shop; null for water, which comes from the tap. Two ingredients are one thing where the
 * table says that they are the same food and both are of one colour or kind, or where their words are the same. How they
 * are cut does not matter; dry and canned are two.
 */
export function thingOf(told: Omit<Told, "food">, table: FoodTable): Thing | null {
  const { item, preparation } = told;
  const food = foodAsSold(table, told);
  const notes = notesOf(item, preparation);
  if (food.ok) {
    return food.value.ndb === NUMBER_OF_WATER ? null : { ...known(food.value, item, table), notes };
  }
  const name = bareName(item);
  const plain = normaliseFood(name);
  if (WATER.test(plain)) return null;
  const key = [plain === "" ? item : plain, ...soldAs(preparation)].join(", ");
  return { key, name, food: null, part: null, notes };
}

/** Whether two names are the same words, one or several of it. */
export const isSameName = (a: string, b: string): boolean =>
  normaliseFood(singularOf(a)) === normaliseFood(singularOf(b));
