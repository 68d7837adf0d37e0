import { remembering } from "./remembering.ts";
import { parseSpokenNumber } from "../../units/number-words.ts";
import { terms } from "../../units/rational.ts";

/**
 * Words that sound like a kitchen's: a model that learnt how people write takes the other one where it is the commoner
 * ("for the pairs"). The same phones in the dictionary of the light engine, but for the first four, which are how twelve
 * voices' "undo", "alright" and "okay" were written. Only this way round: who says "for" is not taken for "four".
 */
const soundAlike = `
  undo: and do, un do
  alright: all right
  okay: ok, o k
  two: to, too
  four: for
  eight: ate
  pear: pair
  pears: pairs
  flour: flower
  thyme: time
  leek: leak
  leeks: leaks
  beet: beat
  beets: beats
  meat: meet
  mussels: muscles
  cereal: serial
  chili: chile
  knead: need
  grate: great
  piece: peace
  whole: hole
  dessert: desert
  kernels: colonels
  plain: plane
  roll: role
  rolls: roles
  root: route
  roots: routes
  fourth: forth
  hour: our
  hours: ours
  weight: wait
  steak: stake
  dough: doe
  maize: maze
  sole: soul
  bread: bred
  they're: their, there
  write: right
`;

/** Other ways that a word may be written, by the word. */
export const otherSpellings: ReadonlyMap<string, readonly string[]> = new Map(
  soundAlike
    .trim()
    .split("\n")
    .map((row) => {
      const [word = "", others = ""] = row.trim().split(": ");
      return [word, others.split(", ")];
    }),
);

/** What the names of foods are compounded with, and what people write as a word of its own. */
const compoundEnd =
  /^(\p{L}{3,})((?:bread|milk|ball|cake|berr(?:y|ie)|seed|nut|meal|fish|paste|starch|root|stock)s?)$/u;

/**
 * All ways that a transcriber may write one word of a grammar: letters, apostrophes, and spaces inside.
 * An accent may be left out ("jalapeño", "jalapeno"), and a compound be two words ("flat breads").
 */
export const writtenForms = remembering((word: string): readonly string[] => {
  const plain = word.normalize("NFD").replaceAll(/\p{M}/gu, "");
  const [, first, last] = compoundEnd.exec(word) ?? [];
  const parts = first === undefined || last === undefined ? [] : [`${first} ${last}`];
  return [...new Set([word, plain, ...parts, ...(otherSpellings.get(word) ?? [])])];
});

/** Whether a word may stand in a number that is written in digits. */
export const isNumberWord = remembering(
  (word: string): boolean =>
    ["and", "hundred", "thousand"].includes(word) || parseSpokenNumber([word], 0) !== null,
);

/** "three hundred and fifty" in digits; null where the words are no whole number. */
export const inDigits = (words: readonly string[]): string | null => digitsOf(words.join(" "));

const digitsOf = remembering((text: string): string | null => {
  const words = text.split(" ");
  if (words[0] === "a" || words[0] === "an") return null;
  const number = parseSpokenNumber(words, 0);
  if (number?.next !== words.length) return null;
  const { numerator, denominator } = terms(number.value);
  return denominator === 1n ? numerator.toString() : null;
});
