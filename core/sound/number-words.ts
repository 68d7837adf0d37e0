import { numberWords } from "../units/number-words.ts";

/**
 * Numbers in words for the synthesiser, which reads "350 to 385" as "three hundred fifty to three eight five" and
 * "450 degrees" as "four fifty".
 */

/** @param n a whole number from 0 to 999,999,999; anything else comes back as its digits one by one */
function wholeNumberWords(n: number): string {
  if (!Number.isInteger(n) || n < 0 || n > 999_999_999) return digitWords(String(n));
  if (n < 1_000_000) return numberWords(n);
  const rest = n % 1_000_000;
  return `${numberWords(Math.floor(n / 1_000_000))} million${rest === 0 ? "" : ` ${numberWords(rest)}`}`;
}

/** "305" becomes "three zero five"; what is no digit is left out. */
const digitWords = (digits: string): string =>
  [...digits].flatMap((digit) => (/\d/.test(digit) ? numberWords(Number(digit)) : [])).join(" ");

/** A number as written, with or without decimals and thousands commas: "1,250", "2.5", "07". */
export function writtenNumberWords(written: string): string {
  const [whole = "", decimals = ""] = written.replaceAll(",", "").split(".");
  const head = whole.length > 9 ? digitWords(whole) : wholeNumberWords(Number(whole));
  return decimals === "" ? head : `${head} point ${digitWords(decimals)}`;
}

const irregularOrdinals: Readonly<Record<string, string>> = {
  one: "first",
  two: "second",
  three: "third",
  five: "fifth",
  eight: "eighth",
  nine: "ninth",
  twelve: "twelfth",
};

/** 21 becomes "twenty-first". */
export function ordinalWords(n: number): string {
  const words = wholeNumberWords(n);
  const cut = Math.max(words.lastIndexOf(" "), words.lastIndexOf("-")) + 1;
  const last = words.slice(cut);
  return (
    words.slice(0, cut) +
    (irregularOrdinals[last] ?? (last.endsWith("y") ? `${last.slice(0, -1)}ieth` : `${last}th`))
  );
}

/** The time of day as a cook says it, without morning or evening: 18:34 is "six thirty-four". */
export function clockWords(hour: number, minute: number): string {
  const spokenHour = wholeNumberWords(hour % 12 === 0 ? 12 : hour % 12);
  if (minute === 0) return `${spokenHour} o'clock`;
  return minute < 10
    ? `${spokenHour} oh ${wholeNumberWords(minute)}`
    : `${spokenHour} ${wholeNumberWords(minute)}`;
}

const parts: Readonly<Record<number, string>> = { 2: "half", 3: "third", 4: "quarter" };

/** 3/4 becomes "three quarters"; 1/2 "one half". */
export function fractionWords(numerator: number, denominator: number): string {
  const part = parts[denominator] ?? ordinalWords(denominator);
  const plural = part === "half" ? "halves" : `${part}s`;
  return `${wholeNumberWords(numerator)} ${numerator === 1 ? part : plural}`;
}
