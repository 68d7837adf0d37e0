import type { FoodTable } from "../food/food.ts";
import type { Told } from "../food/ingredient-food.ts";
import type { House } from "../house/house.ts";
import type { Leftover } from "../house/leftover.ts";
import { servingsFigure } from "../house/servings-words.ts";
import { firstToUse, standingOf } from "../house/standing.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import type { Amount } from "../units/amount.ts";
import { days, plus, type Instant } from "../units/quantity.ts";
import { compare, ONE } from "../units/rational.ts";
import { readInHouse, type InHouse } from "./in-house.ts";
import { wantedOf } from "./shares.ts";
import { isSameName, thingOf } from "./thing.ts";

/**
 * What is said of something in the fridge. `dish`: one of the list's dishes, ready to be eaten. `soon`: nothing of this
 * list, and to be eaten in the next days. `throw-away`: past its day, or heated long ago. `heated`: to be eaten now.
 */
export interface FridgeLine {
  readonly kind: "dish" | "soon" | "throw-away" | "heated";
  readonly leftover: Leftover;
  readonly say: string;
}

/** What the fridge has to say to a list of what to buy. */
export interface FromFridge {
  /** The first to use first. */
  readonly lines: readonly FridgeLine[];
  /** What is itself an ingredient of the dishes. */
  readonly house: readonly InHouse[];
}

/** Nobody knows what is in the fridge. */
export const fridgeUnknown: FromFridge = { lines: [], house: [] };

/** A calendar that names days so that they are still right where the list lies about for a week. */
export interface Calendar {
  readonly now: Instant;
  /** "Thursday, Jan 3". */
  readonly sayDay: (at: Instant) => string;
}

/** What a list is wanted for. */
export interface ListFor {
  readonly meals: readonly CookingMeal[];
  readonly foods: FoodTable;
  /** What the cook has written down of the house: of what stands there nothing is taken off a second time. */
  readonly written: readonly InHouse[];
}

/** So long before its last day something wants to be eaten soon. */
const soon = days(2);
/** Only what is said to be so is as the shop's cooked food: "rice" in the fridge is no dry rice. */
const READY = /\b(?:cooked|boiled|steamed|baked|roasted|canned|tinned)\b/i;
const UNKNOWN: Amount = { kind: "to-taste" };

/** What there is of something, and until when. Of what has only words nobody knows how many servings. */
export function fromFridge({ leftovers }: House, wanted: ListFor, calendar: Calendar): FromFridge {
  const dishes = wanted.meals.flatMap((meal) => meal.dishes);
  const keyOf = (told: Omit<Told, "food">): string | null => thingOf(told, wanted.foods)?.key ?? null;
  const asked = new Set(wantedOf(wanted.meals).map(({ ingredient }) => keyOf(ingredient)));
  const written = new Set(wanted.written.map(keyOf));
  const lines: FridgeLine[] = [];
  const house: InHouse[] = [];
  for (const leftover of firstToUse(leftovers)) {
    const isDish = dishes.some((dish) => isOf(leftover, dish));
    const key = keyOf({ item: leftover.name, preparation: null });
    const isThing = !isDish && key !== null && asked.has(key) && !written.has(key);
    const line = lineOf(leftover, isDish, calendar);
    if (isThing && (line === null || line.kind === "soon")) house.push(asIngredient(leftover, calendar));
    else if (line !== null) lines.push(line);
  }
  return { lines, house };
}

/** Whether it is that dish: of one of its evenings, or under its name. */
function isOf({ of, name }: Leftover, dish: Dish): boolean {
  if (of !== null) return of.dish === dish.id;
  return [dish.name, ...dish.says].some((one) => one.toLowerCase() === name.toLowerCase());
}

function lineOf(leftover: Leftover, isDish: boolean, calendar: Calendar): FridgeLine | null {
  const { name, useBy, place } = leftover;
  const of = name.toLowerCase();
  const amount = leftover.rest.kind === "words" ? "" : `, ${amountOf(leftover)}`;
  const line = (kind: FridgeLine["kind"], say: string): FridgeLine => ({ kind, leftover, say });
  switch (standingOf(leftover, calendar.now)) {
    case "spent":
      return line("throw-away", `Throw away the ${of}${amount}: it is past its day.`);
    case "heated-long":
      return line("throw-away", `Throw away the ${of}${amount}: it was heated more than two hours ago.`);
    case "heated":
      return line("heated", `The ${of}${amount}, was heated: eat it now; it does not count.`);
    case "good":
    case "past-best":
      if (isDish) return line("dish", dishWords(leftover, calendar));
      if (place === "freezer" || useBy > plus(calendar.now, soon)) return null;
      return line("soon", `${amountOf(leftover)} of ${of}, by ${calendar.sayDay(useBy)}`);
  }
}

/** "3 bowls", or the cook's own words. */
const amountOf = ({ rest, servingsOf }: Leftover): string =>
  rest.kind === "words" ? rest.words : servingsFigure(rest.servings, servingsOf);

const whereUntil = ({ place, useBy }: Leftover, { sayDay, now }: Calendar): string => {
  if (place === "fridge") return `in the fridge until ${sayDay(useBy)}`;
  return useBy < now ? "in the freezer, past its best" : "in the freezer";
};

/** That there is some of a dish. How many to cook is for the cook to say: nothing is taken off. */
function dishWords(leftover: Leftover, calendar: Calendar): string {
  const { name, rest } = leftover;
  const where = whereUntil(leftover, calendar);
  if (rest.kind === "words")
    return `There is ${name.toLowerCase()} ${where} (${rest.words}), nobody knows how many servings: eat it first, or cook fewer.`;
  const isMore = compare(rest.servings, ONE) > 0;
  return `${amountOf(leftover)} of ${name.toLowerCase()} ${isMore ? "are" : "is"} ${where}: eat ${isMore ? "those" : "that"} first, or cook fewer.`;
}

/** As something that the house has: measured where the cook has said a measure, else there is some. */
function asIngredient(leftover: Leftover, calendar: Calendar): InHouse {
  const { name, rest } = leftover;
  const of = name.toLowerCase();
  const said = `${amountOf(leftover)} of ${of}, ${whereUntil(leftover, calendar)}`;
  const read = rest.kind === "words" ? readInHouse(`${rest.words} ${of}`) : null;
  const isMeasured =
    read?.ok === true &&
    READY.test(name) &&
    isSameName(read.value.item, of) &&
    read.value.preparation === null;
  return {
    said,
    item: of,
    preparation: null,
    amount: isMeasured ? read.value.amount : UNKNOWN,
    from: "leftover",
  };
}
