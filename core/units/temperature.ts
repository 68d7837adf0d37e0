import { numberWords, parseSpokenNumber } from "./number-words.ts";
import type { Celsius, Fahrenheit } from "./quantity.ts";
import { celsius, fahrenheit } from "./quantity.ts";
import type { Rational } from "./rational.ts";
import { add, div, fromNumber, mul, ratio, sub, toNumber } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";
import type { SpokenValue } from "./spoken-words.ts";
import { spokenWords } from "./spoken-words.ts";

/** F: degrees Fahrenheit. C: degrees Celsius. */
export type Scale = "F" | "C";

/** A temperature as the recipe writes it: the scale stays, so that 365 F is never read back as 185 C. */
export type Heat = { readonly degrees: number; readonly scale: Scale };

const THIRTY_TWO = ratio(32);
const NINE_FIFTHS = ratio(9, 5);

/** Exact degrees Celsius from exact degrees Fahrenheit. Source: NIST SP 811, appendix B.8, (t/F - 32)/1.8. */
export const celsiusFrom = (degreesF: Rational): Rational => div(sub(degreesF, THIRTY_TWO), NINE_FIFTHS);

/** Exact degrees Fahrenheit from exact degrees Celsius; the inverse of `celsiusFrom`. */
export const fahrenheitFrom = (degreesC: Rational): Rational => add(mul(degreesC, NINE_FIFTHS), THIRTY_TWO);

/** The temperature in degrees Celsius, not rounded for the kitchen. */
export function toCelsius(heat: Heat): Celsius {
  return celsius(heat.scale === "C" ? heat.degrees : toNumber(celsiusFrom(fromNumber(heat.degrees))));
}

/** The temperature in degrees Fahrenheit, not rounded for the kitchen. */
export function toFahrenheit(heat: Heat): Fahrenheit {
  return fahrenheit(heat.scale === "F" ? heat.degrees : toNumber(fahrenheitFrom(fromNumber(heat.degrees))));
}

/** The same temperature in the other scale's figures, or unchanged when it already has them. */
export function inScale(heat: Heat, scale: Scale): Heat {
  if (heat.scale === scale) return heat;
  return { degrees: scale === "C" ? toCelsius(heat) : toFahrenheit(heat), scale };
}

/** Below 0 when `a` is the cooler, 0 when equally hot, above 0 when hotter; scales may differ. */
export function compareHeat(a: Heat, b: Heat): number {
  return a.scale === b.scale ? a.degrees - b.degrees : toFahrenheit(a) - toFahrenheit(b);
}

/** The screen's form, to the whole degree: "365°F", "180°C". */
export const formatHeat = (heat: Heat): string => `${String(Math.round(heat.degrees))}°${heat.scale}`;

/** As said in a kitchen that keeps to one scale: "three hundred sixty-five degrees". */
export function spokenHeat(heat: Heat): string {
  const whole = Math.round(heat.degrees);
  const figure = numberWords(Math.abs(whole));
  return `${whole < 0 ? "minus " : ""}${figure} ${Math.abs(whole) === 1 ? "degree" : "degrees"}`;
}

/** The same with its scale: "one hundred eighty degrees Celsius". */
export function spokenHeatInFull(heat: Heat): string {
  return `${spokenHeat(heat)} ${heat.scale === "F" ? "Fahrenheit" : "Celsius"}`;
}

const SCALES: ReadonlyMap<string, Scale> = new Map([
  ["f", "F"],
  ["fahrenheit", "F"],
  ["c", "C"],
  ["celsius", "C"],
  ["centigrade", "C"],
]);

const DIGITS = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

/** "three sixty five" is how an oven is read out; elsewhere three and sixty-five stay two numbers. */
function readDial(words: readonly string[], from: number): SpokenValue<number> | null {
  const leading = DIGITS.indexOf(words[from] ?? "-");
  const rest = parseSpokenNumber(words, from + 1);
  const figure = rest === null ? 0 : toNumber(rest.value);
  if (rest !== null && leading > 0 && figure >= 10 && figure < 100) {
    return { value: leading * 100 + figure, next: rest.next };
  }
  const number = parseSpokenNumber(words, from);
  return number === null ? null : { value: toNumber(number.value), next: number.next };
}

/**
 * A temperature within a sentence, from word `from` on: "three sixty five", "one hundred eighty degrees celsius".
 * Without a named scale it has the kitchen's own. Null where no number stands.
 */
export function parseSpokenHeat(
  words: readonly string[],
  from: number,
  kitchen: Scale = "F",
): SpokenValue<Heat> | null {
  const isNegative = words[from] === "minus";
  const figure = readDial(words, isNegative ? from + 1 : from);
  if (figure === null) return null;
  let next = figure.next;
  if (/^(?:degrees?|deg|°)$/.test(words[next] ?? "")) next += 1;
  const named = SCALES.get(words[next] ?? "");
  const degrees = isNegative ? -figure.value : figure.value;
  return { value: { degrees, scale: named ?? kitchen }, next: named === undefined ? next : next + 1 };
}

/**
 * Reads a whole text as a temperature: "365 F", "180°C", "350 degrees".
 * Errors: one sentence when it is none, or colder than can be.
 */
export function parseHeat(text: string, kitchen: Scale = "F"): Result<Heat, string> {
  const words = spokenWords(text.replace(/°/g, " degrees ").replace(/^\s*[-−](?=\d)/, "minus "));
  const heat = parseSpokenHeat(words, 0, kitchen);
  if (heat?.next !== words.length)
    return err(`"${text}" is not a temperature; write it like 365 F or 180 C.`);
  if (toCelsius(heat.value) < -273.15)
    return err(`"${text}" is colder than anything can be; check the figure.`);
  return ok(heat.value);
}
