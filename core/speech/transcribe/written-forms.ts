import { parseSpokenNumber } from "../../units/number-words.ts";
import { terms } from "../../units/rational.ts";

/** How a word that sounds one way is written in other ways by people, and so by a model that learnt from them. */
const otherSpellings: ReadonlyMap<string, readonly string[]> = new Map([
  ["okay", ["ok", "o k"]],
  ["alright", ["all right"]],
]);

/**
 * All ways that a transcriber may write one word of a grammar: letters, apostrophes, and spaces inside.
 * An accent may be left out ("jalapeño", "jalapeno").
 */
export function writtenForms(word: string): readonly string[] {
  const plain = word.normalize("NFD").replaceAll(/\p{M}/gu, "");
  return [...new Set([word, plain, ...(otherSpellings.get(word) ?? [])])];
}

/** Whether a word may stand in a number that is written in digits. */
export function isNumberWord(word: string): boolean {
  return ["and", "hundred", "thousand"].includes(word) || parseSpokenNumber([word], 0) !== null;
}

/** "three hundred and fifty" in digits; null where the words are no whole number. */
export function inDigits(words: readonly string[]): string | null {
  if (words[0] === "a" || words[0] === "an") return null;
  const number = parseSpokenNumber(words, 0);
  if (number?.next !== words.length) return null;
  const { numerator, denominator } = terms(number.value);
  return denominator === 1n ? numerator.toString() : null;
}
