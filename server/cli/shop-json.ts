import type { Leftover } from "../../core/house/leftover.ts";
import type { WantedThings } from "../../core/house/wanted.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { buyWords } from "../../core/shop/buy-words.ts";
import type { BuyingLine, BuyingList } from "../../core/shop/buying-list.ts";
import type { FridgeLine } from "../../core/shop/from-fridge.ts";
import type { Range } from "../../core/shop/parcel.ts";
import { buyingCaution } from "../../core/shop/written-list.ts";
import { formatAmount } from "../../core/units/amount.ts";
import { toNumber, type Rational } from "../../core/units/rational.ts";

interface RangeJson {
  readonly low: number;
  readonly high: number;
}

interface LineJson {
  readonly name: string;
  /** The food's name in the table; null: it is none of them. */
  readonly food: string | null;
  readonly place: string;
  /** What to ask for, in words. */
  readonly buy: string;
  /** Still to buy, one amount for each measure that could not be added to the others. */
  readonly amounts: readonly string[];
  /** How many pieces, where only parts are wanted of them; null: it is bought by its amounts. */
  readonly pieces: RangeJson | null;
  readonly parts: readonly { readonly part: string; readonly amounts: readonly string[] }[];
  /** Without refuse; null: not known. */
  readonly grams: RangeJson | null;
  /** The upper end as bought, with refuse; null: not known. */
  readonly boughtGrams: number | null;
  readonly notes: readonly string[];
  readonly for: readonly { readonly dish: string; readonly amount: string; readonly item: string }[];
  readonly inHouse: readonly string[];
  readonly notReckoned: readonly string[];
}

/** What is left of one of the dishes, or must not be eaten any more. */
interface FridgeLineJson {
  readonly kind: FridgeLine["kind"];
  readonly name: string;
  /** null: it was put in under its name alone. */
  readonly dish: string | null;
  readonly place: Leftover["place"];
  /** null: not known. */
  readonly servings: number | null;
  /** ISO 8601 in UTC. */
  readonly useBy: string;
  readonly say: string;
}

/** What to buy, for another program; figures to two decimals. */
export interface ShopJson {
  readonly meals: readonly {
    readonly meal: string;
    readonly dishes: readonly { readonly dish: string; readonly servings: number }[];
  }[];
  readonly buy: readonly LineJson[];
  readonly ifYouLike: readonly LineJson[];
  readonly look: readonly LineJson[];
  readonly enough: readonly LineJson[];
  readonly fridge: readonly FridgeLineJson[];
  readonly useFirst: BuyingList["useFirst"];
  readonly notNeeded: BuyingList["notNeeded"];
  /** The names of what is wanted besides. */
  readonly alsoWanted: readonly string[];
  readonly caution: string;
}

const figure = (value: Rational): number => Math.round(toNumber(value) * 100) / 100;

const range = (value: Range | null): RangeJson | null =>
  value === null ? null : { low: figure(value.low), high: figure(value.high) };

const lineJson = (line: BuyingLine): LineJson => ({
  name: line.name,
  food: line.food,
  place: line.place.name,
  buy: buyWords(line),
  amounts: line.parcels.map(({ amount }) => formatAmount(amount)),
  pieces: range(line.pieces),
  parts: line.parts.map(({ part, parcels }) => ({
    part,
    amounts: parcels.map(({ amount }) => formatAmount(amount)),
  })),
  grams: range(line.grams),
  boughtGrams: line.boughtGrams === null ? null : figure(line.boughtGrams),
  notes: line.notes,
  for: line.shares.map(({ dish, amount, item }) => ({ dish, amount: formatAmount(amount), item })),
  inHouse: line.inHouse,
  notReckoned: line.notReckoned,
});

const fridgeLineJson = ({ kind, leftover, say }: FridgeLine): FridgeLineJson => ({
  kind,
  name: leftover.name,
  dish: leftover.of?.dish ?? null,
  place: leftover.place,
  servings: leftover.rest.kind === "servings" ? toNumber(leftover.rest.servings) : null,
  useBy: new Date(leftover.useBy).toISOString(),
  say,
});

/** The list as `shop --json` prints it. @param besides what is wanted besides */
export const shopJson = (
  list: BuyingList,
  meals: readonly CookingMeal[],
  besides: WantedThings,
): ShopJson => ({
  meals: meals.map(({ id, dishes }) => ({
    meal: id,
    dishes: dishes.map((dish) => ({ dish: dish.id, servings: dish.yield.servings })),
  })),
  buy: list.buy.map(lineJson),
  ifYouLike: list.ifYouLike.map(lineJson),
  look: list.look.map(lineJson),
  enough: list.enough.map(lineJson),
  fridge: list.fridge.map(fridgeLineJson),
  useFirst: list.useFirst,
  notNeeded: list.notNeeded,
  alsoWanted: [...besides.values()].map(({ name }) => name),
  caution: buyingCaution,
});
