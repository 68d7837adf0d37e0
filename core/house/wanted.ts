import { isPlural, normaliseFood } from "../food/names.ts";
import { hours } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { capital } from "../units/capital.ts";

declare const thing: unique symbol;
/** What is wanted, by its name as names are compared: "red onion" for "the red onions". */
export type ThingKey = string & { readonly [thing]: true };

/** The key that is kept in a log. */
export const thingKey = (text: string): ThingKey => text as ThingKey;

/** The key of a name; "" for a name without a word of its own: "some more". */
export const keyOfThing = (name: string): ThingKey => thingKey(normaliseFood(name));

/** Something that the cook wants from the shop, for no meal in particular. */
export interface WantedThing {
  readonly key: ThingKey;
  /** In the cook's own words: "kitchen paper". */
  readonly name: string;
  /** null: it is still to be bought. */
  readonly boughtAt: Instant | null;
}

/** All that is wanted, and what was bought of it lately, the oldest wish first. */
export type WantedThings = ReadonlyMap<ThingKey, WantedThing>;

/** What was bought so long ago goes off the list with the next thing that is wanted or bought: nobody clears it away. */
export const boughtStaysFor = hours(12);

/** The longest name that is kept: a list is no letter. */
export const mostThingLetters = 80;

/** "Lemons are", "Kitchen paper is", "Salt and pepper are". */
export function thingIs(name: string): string {
  const isSeveral = isPlural(name) || / and /.test(name);
  return `${capital(name)} ${isSeveral ? "are" : "is"}`;
}
