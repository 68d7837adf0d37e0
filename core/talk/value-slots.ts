import { parseSpokenAmount, parseSpokenUnit } from "../units/amount-words.ts";
import { parseSpokenClock } from "../units/clock-words.ts";
import { parseSpokenDuration } from "../units/duration.ts";
import { parseSpokenNumber } from "../units/number-words.ts";
import type { Measured } from "../units/amount.ts";
import { measured } from "../units/amount.ts";
import { toNumber, ZERO } from "../units/rational.ts";
import type { SpokenValue } from "../units/spoken-words.ts";
import type { Scale } from "../units/temperature.ts";
import { parseSpokenHeat } from "../units/temperature.ts";
import { nutrientNamed } from "./nutrient-names.ts";
import type { Slots } from "./slots.ts";

/** What reading a value needs to know of the kitchen. */
export interface Moment {
  /** Minutes from midnight, now. */
  readonly minuteNow: number;
  /** The scale that the recipes keep: what a bare "three sixty five" means. */
  readonly scale: Scale;
}

/** The slots whose values are figures; the others hold names. */
export type ValueSlot =
  | "span"
  | "length"
  | "extra"
  | "number"
  | "clock"
  | "heat"
  | "scale"
  | "measure"
  | "unit"
  | "quantity"
  | "nutrient";

type Reader<S extends ValueSlot> = (
  words: readonly string[],
  from: number,
  moment: Moment,
) => SpokenValue<NonNullable<Slots[S]>> | null;

const SCALES: ReadonlyMap<string, Scale> = new Map([
  ["f", "F"],
  ["fahrenheit", "F"],
  ["c", "C"],
  ["celsius", "C"],
  ["centigrade", "C"],
]);

const isMore = (word: string): boolean => /^(?:more|another|extra|further)$/.test(word);

/** "Two more minutes" is time added, never a time of its own. */
const readSpan: Reader<"span"> = (words, from) => {
  const read = parseSpokenDuration(words, from);
  if (read === null || /^(?:more|extra|longer)$/.test(words[read.next] ?? "")) return null;
  return words.slice(from, read.next).some(isMore) ? null : read;
};

const readExtra: Reader<"extra"> = (words, from) => {
  const read = parseSpokenDuration(words, from);
  if (read === null) return null;
  if (/^(?:more|extra|longer)$/.test(words[read.next] ?? ""))
    return { value: read.value, next: read.next + 1 };
  return words.slice(from, read.next).some(isMore) ? read : null;
};

const readNumber: Reader<"number"> = (words, from) => {
  const read = parseSpokenNumber(words, from);
  if (read === null) return null;
  const value = toNumber(read.value);
  return value >= 0 ? { value, next: read.next } : null;
};

const readScale: Reader<"scale"> = (words, from) => {
  const at = words[from] === "degrees" ? from + 1 : from;
  const value = SCALES.get(words[at] ?? "");
  return value === undefined ? null : { value, next: at + 1 };
};

const readClock: Reader<"clock"> = (words, from, { minuteNow }) => parseSpokenClock(words, from, minuteNow);
const readMeasure: Reader<"measure"> = (words, from) => {
  const read = parseSpokenAmount(words, from);
  // Things without a unit convert into nothing.
  return read === null || read.value.unit === "piece" ? null : read;
};

/** "Zero cups" is read too, so that it can be refused in words. */
function readNought(words: readonly string[], from: number): SpokenValue<Measured> | null {
  const number = parseSpokenNumber(words, from);
  if (number?.value !== ZERO) return null;
  const unit = parseSpokenUnit(words, number.next);
  return { value: measured(ZERO, unit?.value ?? "piece"), next: unit?.next ?? number.next };
}

/** "Two tablespoons of", "three", "half an": all that stands before the food. */
const readQuantity: Reader<"quantity"> = (words, from) => {
  const read = parseSpokenAmount(words, from) ?? readNought(words, from);
  if (read === null) return null;
  const next = /^(?:of|an?)$/.test(words[read.next] ?? "") ? read.next + 1 : read.next;
  return { value: read.value, next };
};

const readNutrient: Reader<"nutrient"> = (words, from) => nutrientNamed(words, from);

/** One reader per value slot: from word `from` on, the value and where the sentence goes on, or null. */
export const valueReaders: { readonly [S in ValueSlot]: Reader<S> } = {
  span: readSpan,
  length: (words, from, moment) => readSpan(words, from, moment),
  extra: readExtra,
  number: readNumber,
  clock: readClock,
  heat: (words, from, { scale }) => parseSpokenHeat(words, from, scale),
  scale: readScale,
  measure: readMeasure,
  unit: parseSpokenUnit,
  quantity: readQuantity,
  nutrient: readNutrient,
};

/** Whether a slot holds a figure. */
export const isValueSlot = (slot: string): slot is ValueSlot => Object.hasOwn(valueReaders, slot);
