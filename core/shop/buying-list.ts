import type { FoodTable } from "../food/food.ts";
import { boughtWeight } from "../food/refuse.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type { Amount } from "../units/amount.ts";
import { ZERO, type Rational } from "../units/rational.ts";
import type { FridgeLine, FromFridge } from "./from-fridge.ts";
import type { InHouse } from "./in-house.ts";
import { placeOf, type Place, type Places } from "./places.ts";
import type { Parcel, Range } from "./parcel.ts";
import { wantedOf, type Wanted } from "./shares.ts";
import { stockedOf, stockOf, takeFrom, type Stock } from "./stock.ts";
import { thingOf, type Thing } from "./thing.ts";
import { inPieces, needOf, weightOfNeed, type PartNeed } from "./need.ts";

/** What one dish takes of a thing. */
export interface Share {
  readonly dish: string;
  readonly amount: Amount;
  /** As its recipe names it: "lemon juice". */
  readonly item: string;
  /** What is taken of it: "juice"; null: all of it. */
  readonly part: string | null;
}

/** One thing of the list. */
export interface BuyingLine {
  /** Equal for the same thing in two lists. */
  readonly key: string;
  readonly name: string;
  /** The food's name in the table; null: the table does not know it. */
  readonly food: string | null;
  readonly place: Place;
  /** Still to buy of it, added up as far as it can be; empty where nothing is. */
  readonly parcels: readonly Parcel[];
  /** Still to get out of it: the juice and the zest of lemons. */
  readonly parts: readonly PartNeed[];
  /** How many to buy where parts are wanted of it; null: no parts are. */
  readonly pieces: Range | null;
  /** What is still to buy weighs without refuse; null: not known, or nothing is. */
  readonly grams: Range | null;
  /** The upper end of it as bought, with peel, stones and bones; null: not known. */
  readonly boughtGrams: Rational | null;
  /** What to look for: "large", "no salt added". */
  readonly notes: readonly string[];
  readonly shares: readonly Share[];
  /** What the house gives of it, as the cook says. */
  readonly inHouse: readonly string[];
  /** What there is of it too, but cannot be reckoned with: nobody says how much, or the measures do not compare. */
  readonly notReckoned: readonly string[];
}

/** What to buy for some meals. */
export interface BuyingList {
  /** To buy, by place in the shop, then by name. */
  readonly buy: readonly BuyingLine[];
  /** What dishes may do without. */
  readonly ifYouLike: readonly BuyingLine[];
  /** Nobody says how much of it is wanted, or how much there is: look before you go. */
  readonly look: readonly BuyingLine[];
  /** The house has enough of it. */
  readonly enough: readonly BuyingLine[];
  /** Dishes of the list that are in the fridge, and what there must not be eaten any more. */
  readonly fridge: readonly FridgeLine[];
  /** What is left over from before and goes into these dishes; in none of them: it wants to be eaten soon. */
  readonly useFirst: readonly { readonly said: string; readonly dishes: readonly string[] }[];
  /** What is in the house and in none of these dishes, as the cook says. */
  readonly notNeeded: readonly string[];
}

/** What a list is made from. */
export interface ToBuy {
  readonly meals: readonly CookingMeal[];
  readonly foods: FoodTable;
  readonly places: Places;
  readonly house: readonly InHouse[];
  readonly fridge: FromFridge;
}

type Kind = "buy" | "ifYouLike" | "look";

/** An ingredient with what it is in the shop. */
interface Asked extends Wanted {
  readonly thing: Thing;
  readonly kind: Kind;
}

function kindOf({ ingredient }: Wanted): Kind {
  if (ingredient.optional) return "ifYouLike";
  return ingredient.amount.kind === "to-taste" ? "look" : "buy";
}

function askedOf({ meals, foods }: ToBuy): readonly Asked[] {
  return wantedOf(meals).flatMap((wanted) => {
    const thing = thingOf(wanted.ingredient, foods);
    return thing === null ? [] : [{ ...wanted, thing, kind: kindOf(wanted) }];
  });
}

const unique = (words: readonly string[]): readonly string[] => [...new Set(words)];

const sharesOf = (asked: readonly Asked[]): readonly Share[] =>
  asked.map(({ dish, ingredient, thing }) => ({
    dish,
    amount: ingredient.amount,
    item: ingredient.item,
    part: thing.part?.of.part ?? null,
  }));

interface Reckoned {
  readonly line: BuyingLine;
  readonly isNothing: boolean;
  readonly stock: Stock;
}

function lineOf(asked: readonly Asked[], places: Places, before: Stock): Reckoned {
  const [first] = asked;
  if (first === undefined) throw new Error("a line of the list is asked for by no dish");
  const { key, name, food } = first.thing;
  const wanted = needOf(asked.map(({ thing, ingredient }) => ({ thing, ingredient })));
  const { need, pieces, stock, taken, unlike } = takeFrom(before, wanted, food);
  const grams = weightOfNeed(need);
  const line: BuyingLine = {
    key,
    name,
    food: food?.name ?? null,
    place: placeOf(places, [food?.name ?? "", name, key]),
    parcels: pieces === null ? need.whole : need.whole.filter((parcel) => inPieces(parcel, food) === null),
    parts: need.parts,
    pieces,
    grams,
    boughtGrams: grams === null || food === null ? null : boughtWeight(food, grams.high),
    notes: unique(asked.flatMap(({ thing }) => thing.notes)),
    shares: sharesOf(asked),
    inHouse: taken,
    notReckoned: [...unlike, ...stock.some],
  };
  return { line, isNothing: line.parcels.length === 0 && (pieces === null || pieces.high === ZERO), stock };
}

type Placed = { readonly kind: Kind | "enough"; readonly line: BuyingLine };

/** The lines of one thing, each in the part of the list where it belongs. */
function linesOf(asked: readonly Asked[], places: Places, inHouse: Stock): readonly Placed[] {
  const of = (kind: Kind): readonly Asked[] => asked.filter((one) => one.kind === kind);
  const [bought, liked, tasted] = [of("buy"), of("ifYouLike"), of("look")];
  const lines: Placed[] = [];
  let stock = inHouse;
  for (const [kind, wanted] of [
    // What goes in to taste as well is told where it is bought.
    ["buy", bought.length === 0 ? [] : [...bought, ...tasted]],
    ["ifYouLike", liked],
  ] as const) {
    if (wanted.length === 0) continue;
    const { line, isNothing, stock: left } = lineOf(wanted, places, stock);
    const isTaste = wanted.every(({ ingredient }) => ingredient.amount.kind === "to-taste");
    lines.push({ kind: isNothing && !isTaste ? "enough" : stock.some.length > 0 ? "look" : kind, line });
    stock = left;
  }
  if (tasted.length > 0 && bought.length === 0)
    lines.push({ kind: "look", line: lineOf(tasted, places, stock).line });
  return lines;
}

function grouped(asked: readonly Asked[]): ReadonlyMap<string, readonly Asked[]> {
  const groups = new Map<string, readonly Asked[]>();
  for (const one of asked) groups.set(one.thing.key, [...(groups.get(one.thing.key) ?? []), one]);
  return groups;
}

/**
 * One list for all meals: what is the same thing in the shop is one line, with what each dish takes of it. Water is not
 * bought. What the table of foods does not know stands under its own name; nothing is dropped.
 */
export function buyingList(wanted: ToBuy): BuyingList {
  const { foods, places, house, fridge } = wanted;
  const groups = grouped(askedOf(wanted));
  const stocked = stockedOf([...fridge.house, ...house], foods);
  const all = [...groups].flatMap(([key, asked]) => {
    const own = stocked.filter(({ thing }) => thing?.key === key);
    return linesOf(asked, places, stockOf(own));
  });
  const lines = (kind: Kind | "enough"): readonly BuyingLine[] =>
    all
      .filter((one) => one.kind === kind)
      .map(({ line }) => line)
      .toSorted(byPlace);
  return {
    buy: lines("buy"),
    ifYouLike: lines("ifYouLike"),
    look: lines("look"),
    enough: lines("enough"),
    fridge: fridge.lines.filter(({ kind }) => kind !== "soon"),
    useFirst: [
      ...stocked.flatMap(({ one, thing }) => {
        const dishes = unique((groups.get(thing?.key ?? "") ?? []).map(({ dish }) => dish));
        return one.from === "leftover" && dishes.length > 0 ? [{ said: one.said, dishes }] : [];
      }),
      ...fridge.lines.flatMap(({ kind, say }) => (kind === "soon" ? [{ said: say, dishes: [] }] : [])),
    ],
    notNeeded: stocked.filter(({ thing }) => !groups.has(thing?.key ?? "")).map(({ one }) => one.said),
  };
}

const byPlace = (a: BuyingLine, b: BuyingLine): number =>
  a.place.order - b.place.order || (a.name.toLowerCase() < b.name.toLowerCase() ? -1 : 1);
