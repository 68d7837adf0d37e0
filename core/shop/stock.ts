import type { Food, FoodTable } from "../food/food.ts";
import { scaleAmount } from "../units/amount.ts";
import { compare, div, ONE, ratio, sub, ZERO } from "../units/rational.ts";
import { unitWords } from "../units/unit.ts";
import type { InHouse } from "./in-house.ts";
import { inPieces, parcelIn, piecesOf, type Need } from "./need.ts";
import { lessened, scaled, takeOff, type Parcel, type Range, type Rest } from "./parcel.ts";
import { thingOf, type Thing } from "./thing.ts";

/** One thing that is in the house. */
export interface Stocked {
  readonly one: InHouse;
  /** null: water, which nobody keeps. */
  readonly thing: Thing | null;
}

interface Held {
  readonly said: string;
  /** null: it is the thing itself. */
  readonly part: string | null;
  readonly parcel: Parcel;
}

/** What is in the house of one thing. */
export interface Stock {
  readonly held: readonly Held[];
  /** There is some, and nobody has said how much. */
  readonly some: readonly string[];
}

const HUNDRED = ratio(100);

/** What lies in the house is weighed with its peel; a recipe weighs without. null: how much of it that is nobody knows. */
function heldOf({ one, thing }: Stocked): Held | null {
  if (thing === null || one.amount.kind === "to-taste") return null;
  const food = thing.part?.food ?? thing.food;
  const isWeight = unitWords(one.amount.unit).dimension === "mass";
  if (isWeight && food?.refuse === null) return null;
  const kept = isWeight && food !== null ? div(sub(HUNDRED, food.refuse ?? ZERO), HUNDRED) : ONE;
  const amount = scaleAmount(one.amount, kept);
  if (amount.kind === "to-taste") return null;
  const parcel = parcelIn(thing, amount, one.item, one.preparation);
  return { said: one.said, part: thing.part?.of.part ?? null, parcel };
}

/** What is in the house, each with what it is in the shop; what is left over comes first. */
export function stockedOf(house: readonly InHouse[], foods: FoodTable): readonly Stocked[] {
  const rank = ({ from }: InHouse): number => (from === "leftover" ? 0 : 1);
  return house.toSorted((a, b) => rank(a) - rank(b)).map((one) => ({ one, thing: thingOf(one, foods) }));
}

/** @param stocked of one thing */
export function stockOf(stocked: readonly Stocked[]): Stock {
  const told = stocked.map((one) => ({ said: one.one.said, held: heldOf(one) }));
  return {
    held: told.flatMap(({ held }) => held ?? []),
    some: told.filter(({ held }) => held === null).map(({ said }) => said),
  };
}

/** What is still wanted after the house has given what it has. */
export interface Remaining {
  readonly need: Need;
  /** How many of the whole are to be bought for it; null: it is bought by its parcels. */
  readonly pieces: Range | null;
  readonly stock: Stock;
  /** What was taken off, and what could not be, for nobody can compare the two; as the cook says. */
  readonly taken: readonly string[];
  readonly unlike: readonly string[];
}

interface Step {
  readonly need: Need;
  readonly left: Parcel | null;
  readonly gave: Rest["gave"];
}

function giveWhole(need: Need, parcel: Parcel): Step {
  const { wanted, atHand, gave } = takeOff(need.whole, parcel);
  return { need: { ...need, whole: wanted }, left: atHand, gave };
}

function givePart(need: Need, part: string, parcel: Parcel): Step {
  const own = need.parts.find((one) => one.part === part);
  if (own === undefined) return { need, left: parcel, gave: "idle" };
  const { wanted, atHand, gave } = takeOff(own.parcels, parcel);
  const parts = need.parts
    .map((one) => (one === own ? { ...one, parcels: wanted } : one))
    .filter(({ parcels }) => parcels.length > 0);
  return { need: { ...need, parts }, left: atHand, gave };
}

/** Takes what the house has off a need; what is left in the house is there for the next one. */
export function takeFrom(stock: Stock, wanted: Need, food: Food | null): Remaining {
  const [taken, unlike, held]: [string[], string[], Held[]] = [[], [], []];
  let need = wanted;
  for (const one of stock.held) {
    const isPiece = one.part === null && wanted.parts.length > 0;
    const step = isPiece
      ? null
      : one.part === null
        ? giveWhole(need, one.parcel)
        : givePart(need, one.part, one.parcel);
    if (step === null) {
      held.push(one);
      continue;
    }
    need = step.need;
    if (step.gave === "some") taken.push(one.said);
    if (step.gave === "unlike") unlike.push(one.said);
    if (step.left !== null) held.push({ ...one, parcel: step.left });
  }
  const first: Remaining = { need, pieces: null, stock: { ...stock, held }, taken, unlike };
  return wanted.parts.length === 0 ? first : givePieces(first, food);
}

/** Where parts are wanted the house gives whole ones: each has its juice and its zest. */
function givePieces(remaining: Remaining, food: Food | null): Remaining {
  let pieces = piecesOf(remaining.need, food);
  const [taken, unlike, held]: [string[], string[], Held[]] = [
    [...remaining.taken],
    [...remaining.unlike],
    [],
  ];
  for (const one of remaining.stock.held) {
    const has = one.part === null ? inPieces(one.parcel, food) : null;
    if (has === null || has.low === ZERO || pieces.high === ZERO) {
      held.push(one);
      if (one.part === null && has === null) unlike.push(one.said);
      continue;
    }
    taken.push(one.said);
    const isMore = compare(has.low, pieces.high) > 0;
    const over = isMore ? div(sub(has.low, pieces.high), has.low) : ZERO;
    pieces = lessened(pieces, has.low);
    if (over !== ZERO) held.push({ ...one, parcel: scaled(one.parcel, over) });
  }
  return { ...remaining, pieces, stock: { ...remaining.stock, held }, taken, unlike };
}
