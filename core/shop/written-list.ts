import { listed } from "../cook/say-call.ts";
import { pluralOf, singularOf } from "../food/names.ts";
import type { CookingMeal } from "../recipe/model.ts";
import { measured, type Amount } from "../units/amount.ts";
import { shortAmount } from "../units/amount-words.ts";
import { inKitchenUnit } from "../units/kitchen-figure.ts";
import { compare, ONE } from "../units/rational.ts";
import { buyWords, ofPart, pieceCount } from "./buy-words.ts";
import type { BuyingLine, BuyingList, Share } from "./buying-list.ts";
import { addRanges, rangeOf } from "./parcel.ts";
import { isSameName } from "./thing.ts";

/** One thing of the list, in words. */
export interface WrittenLine {
  /** The same for the same thing whenever a list is made. */
  readonly id: string;
  readonly name: string;
  /** "9 cloves, about a head"; empty where nobody says how much. */
  readonly buy: string;
  /** What to look for, and what the house has of it: "no salt added". Empty where there is nothing to tell. */
  readonly note: string;
  /** "2 for the soup, 3 for the sauce". */
  readonly shares: string;
}

/** Why a thing is on the list. */
export type SectionKind = "buy" | "if-you-like" | "look" | "enough";

/** A part of the list under its heading. */
export interface WrittenSection {
  readonly kind: SectionKind;
  readonly name: string;
  readonly lines: readonly WrittenLine[];
}

/** The list in words, as it is printed and shown. */
export interface WrittenList {
  /** The meals that it is for. */
  readonly title: string;
  /** "Soup, 4 bowls". */
  readonly dishes: readonly string[];
  /** Of what is in the fridge, a sentence each: dishes of the list, and what is to be thrown away. */
  readonly fridge: readonly string[];
  /** What to use up first: "half a cabbage, for the salad". */
  readonly useFirst: readonly string[];
  readonly sections: readonly WrittenSection[];
  /** What is in the house and in none of the dishes. */
  readonly notNeeded: readonly string[];
}

/** What no list takes off the shopper's hands. */
export const buyingCaution =
  "What you may eat is for your clinician to say: this list checks no diet and no allergy. Read the label of every package.";

function nameOf(line: BuyingLine): string {
  const count = pieceCount(line);
  if (count === null) return line.name;
  return compare(count, ONE) > 0 ? pluralOf(line.name) : singularOf(line.name);
}

/** "2 for the soup", "1 tbsp juice for the salad"; in brackets what its recipe calls it, where that is another name. */
function shareWords({ dish, amount, item, part }: Share, name: string, buy: string): string {
  const own = inKitchenUnit(amount);
  const told = part === null || own.kind === "to-taste" ? shortAmount(own) : ofPart(own, part);
  const other = part !== null || isSameName(item, name) ? "" : ` (${item})`;
  const isTold = buy === told || buy.startsWith(`${told},`);
  return `${isTold ? "" : `${told} `}for the ${dish}${other}`;
}

/** What a dish takes of one thing several times in one measure is told once. */
function eachOnce(shares: readonly Share[]): readonly Share[] {
  const sums: Share[] = [];
  for (const share of shares) {
    const at = sums.findIndex((one) => isAlike(one, share));
    const before = sums[at];
    if (before === undefined) sums.push(share);
    else sums[at] = { ...before, amount: bothTogether(before.amount, share.amount) };
  }
  return sums;
}

const unitOf = (amount: Amount): string => (amount.kind === "to-taste" ? "to taste" : amount.unit);

const isAlike = (a: Share, b: Share): boolean =>
  a.dish === b.dish &&
  a.part === b.part &&
  unitOf(a.amount) === unitOf(b.amount) &&
  isSameName(a.item, b.item);

function bothTogether(a: Amount, b: Amount): Amount {
  if (a.kind === "to-taste" || b.kind === "to-taste") return a;
  const { low, high } = addRanges(rangeOf(a), rangeOf(b));
  return measured(low, a.unit, high);
}

function noteOf({ notes, inHouse, notReckoned, name }: BuyingLine): string {
  const isCooked = /^(?:cooked|boiled)\b/.test(name) || notes.some((note) => /\bcooked\b/.test(note));
  return [
    ...notes,
    ...(isCooked ? ["ready cooked, or raw to cook yourself"] : []),
    ...(inHouse.length === 0 ? [] : [`in the house: ${inHouse.join(", ")}`]),
    ...(notReckoned.length === 0 ? [] : [`in the house, but not taken off: ${notReckoned.join(", ")}`]),
  ].join("; ");
}

function written(line: BuyingLine, kind: SectionKind): WrittenLine {
  const [name, buy] = [nameOf(line), kind === "enough" ? "" : buyWords(line)];
  const shares = eachOnce(line.shares);
  const only = shares.length === 1 ? buy : "";
  return {
    id: `${kind}: ${line.key}`,
    name,
    buy,
    note: noteOf(line),
    shares: shares.map((share) => shareWords(share, line.name, only)).join(", "),
  };
}

function byPlace(lines: readonly BuyingLine[]): readonly WrittenSection[] {
  return [...new Set(lines.map(({ place }) => place.name))].map((name) => ({
    kind: "buy" as const,
    name,
    lines: lines.filter(({ place }) => place.name === name).map((line) => written(line, "buy")),
  }));
}

function section(kind: SectionKind, name: string, lines: readonly BuyingLine[]): readonly WrittenSection[] {
  return lines.length === 0 ? [] : [{ kind, name, lines: lines.map((line) => written(line, kind)) }];
}

/** The list in words. @param meals that it was made for */
export function writtenList(list: BuyingList, meals: readonly CookingMeal[]): WrittenList {
  return {
    title: listed(meals.map(({ name }) => name)),
    dishes: meals.flatMap(({ dishes }) =>
      dishes.map((dish) => `${dish.name}, ${dish.yield.servings} ${dish.yield.of}`),
    ),
    fridge: list.fridge.map(({ say }) => say),
    useFirst: list.useFirst.map(({ said, dishes }) =>
      dishes.length === 0 ? said : `${said}, for the ${listed(dishes)}`,
    ),
    sections: [
      ...byPlace(list.buy),
      ...section("if-you-like", "if you like", list.ifYouLike),
      ...section("look", "look whether there is enough", list.look),
      ...section("enough", "enough in the house", list.enough),
    ],
    notNeeded: list.notNeeded,
  };
}
