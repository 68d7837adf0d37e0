import { numberWords } from "../units/number-words.ts";
import { spokenWords } from "../units/spoken-words.ts";
import { inFull } from "./contractions.ts";

/** Nobody says more than this in one breath; what is longer is chatter, and not worth the time to read. */
const MOST_LETTERS = 300;

const FILLERS: ReadonlySet<string> = new Set([
  "please",
  "uh",
  "um",
  "er",
  "erm",
  "hm",
  "ah",
  "just",
  "kindly",
  "like",
]);
const ARTICLES: ReadonlySet<string> = new Set(["the", "a", "an"]);

/** A word that may stand anywhere and change nothing. */
export const isFiller = (word: string): boolean => FILLERS.has(word) || ARTICLES.has(word);

/** "jalapeño" and "jalapeno" are one word. */
const withoutAccents = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "");

/** What was said or typed as lower-case words: without accents, punctuation and short forms. Figures stay figures. */
export function wordsOf(text: string): readonly string[] {
  const written = withoutAccents(text.slice(0, MOST_LETTERS))
    .replace(/°\s*([cf])\b/gi, " degrees $1")
    .replace(/°/g, " degrees ")
    .replace(/(^|[^\d\s]\s+)-(?=\d)/g, "$1minus ");
  return inFull(spokenWords(written));
}

/** A name as words to compare with: without articles, small figures as words ("timer 2" is "timer two"). */
export function nameWords(text: string): readonly string[] {
  return spokenWords(withoutAccents(text))
    .filter((word) => !isFiller(word))
    .flatMap(nameWord);
}

/** One word of a name as it is compared: a figure becomes words. */
export const nameWord = (word: string): readonly string[] =>
  /^\d{1,3}$/.test(word) ? spokenWords(numberWords(Number(word))) : [word];

const BEFORE: readonly (readonly string[])[] = [
  "can you",
  "could you",
  "would you",
  "will you",
  "i want you to",
  "i would like you to",
  "i would like to",
  "i want to",
  "i need you to",
  "hey",
  "okay",
  "ok",
  "so",
  "and",
  "now",
  "alright",
  "right",
  "well",
  "then",
  "oh",
  "hello",
  "could i",
  "can i have",
].map((text) => text.split(" "));

const AFTER: readonly (readonly string[])[] = [
  "thanks",
  "thank you",
  "for me",
  "now",
  "then",
  "again",
  "would you",
  "okay",
  "ok",
  "if you can",
].map((text) => text.split(" "));

/**
 * The utterance without its manners: each reading drops one more courtesy from the front or the back,
 * the fullest first. A courtesy may be the whole message ("okay"), so it is dropped only when something is left.
 */
export function readings(words: readonly string[]): readonly (readonly string[])[] {
  const out: (readonly string[])[] = [words];
  for (let at = 0; at < out.length && out.length < 12; at += 1) {
    const current = out[at] ?? [];
    const front = BEFORE.filter((polite) => starts(current, polite)).map((polite) =>
      current.slice(polite.length),
    );
    const back = AFTER.filter((polite) => ends(current, polite)).map((polite) =>
      current.slice(0, -polite.length),
    );
    out.push(...[...front, ...back].filter((shorter) => shorter.some((word) => !isFiller(word))));
  }
  return out;
}

const starts = (words: readonly string[], start: readonly string[]): boolean =>
  start.length < words.length && start.every((word, at) => words[at] === word);

const ends = (words: readonly string[], end: readonly string[]): boolean =>
  end.length < words.length && end.every((word, at) => words[words.length - end.length + at] === word);
