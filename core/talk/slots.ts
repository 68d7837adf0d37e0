import type { Nutrient } from "../food/nutrients.ts";
import type { Span } from "../units/duration.ts";
import type { Measured } from "../units/amount.ts";
import type { Heat, Scale } from "../units/temperature.ts";
import type { Unit } from "../units/unit.ts";

/** What a pattern's slots caught in one utterance; null where the pattern has no such slot. */
export interface Slots {
  readonly span: Span | null;
  /** A length before a noun: "twelve minute". */
  readonly length: Span | null;
  /** A length said as more ("two more minutes"). */
  readonly extra: Span | null;
  readonly number: number | null;
  /** Minutes from midnight. */
  readonly clock: number | null;
  readonly heat: Heat | null;
  readonly scale: Scale | null;
  readonly measure: Measured | null;
  readonly unit: Unit | null;
  /** How much of a food: "two tablespoons of", "three". */
  readonly quantity: Measured | null;
  /** What foods hold: sodium, energy. */
  readonly nutrient: Nutrient | null;
  readonly dish: string | null;
  /** A dish, a step, or what a step is about. */
  readonly target: string | null;
  readonly timer: string | null;
  readonly food: string | null;
  /** What a timer shall be called. */
  readonly name: string | null;
  /** A food that may stand in for another. */
  readonly stand: string | null;
  /** What a step is done in or on: "pan". */
  readonly way: string | null;
  /** "Blender": what does not belong to the food. */
  readonly tool: string | null;
  /** A kind of work by hand: "chop". */
  readonly work: string | null;
  /** The same as what is being done: "chopping". */
  readonly working: string | null;
  /** "stirred", "flipped". */
  readonly deed: string | null;
  /** What may be left: a dish, or something in the fridge. */
  readonly left: string | null;
  /** What one person eats of a dish: "bowl". */
  readonly helping: string | null;
  /** A food, a group of foods or a dish that may be allowed. */
  readonly edible: string | null;
  /** What may be put on the buying list, and what is on it. */
  readonly thing: string | null;
  readonly listed: string | null;
  /** What is noted for the next time, in the cook's own words. */
  readonly note: string | null;
  /** Which candidate of an open question, counted from 0. */
  readonly pick: number | null;
}

export type SlotName = keyof Slots;

export const noSlots: Slots = {
  span: null,
  length: null,
  extra: null,
  number: null,
  clock: null,
  heat: null,
  scale: null,
  measure: null,
  unit: null,
  quantity: null,
  nutrient: null,
  dish: null,
  target: null,
  timer: null,
  food: null,
  name: null,
  stand: null,
  way: null,
  tool: null,
  work: null,
  working: null,
  deed: null,
  left: null,
  helping: null,
  edible: null,
  thing: null,
  listed: null,
  note: null,
  pick: null,
};

/** Whether a text names a slot. */
export const isSlotName = (text: string): text is SlotName => Object.hasOwn(noSlots, text);
