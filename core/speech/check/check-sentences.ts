import type { Grammar, Phrase } from "../grammar.ts";
import { spokenWords } from "../spoken-words.ts";

/** One sentence of a check of the ear; it is said after the address. */
export type CheckSentence = {
  /** What it shows: a short question, a number with a close neighbour, tonight's names, a short answer. */
  readonly shows: "question" | "number" | "dish" | "food" | "answer";
  readonly words: readonly string[];
};

/** The names of tonight, as the recipes write them; both empty where no meal is known. */
export type TonightsNames = { readonly dishes: readonly string[]; readonly foods: readonly string[] };

/** A name longer than this is a test of the cook's breath. */
const mostWords = 3;

/** The five sentences, with tonight's names where there are short ones. */
export function checkSentences({ dishes, foods }: TonightsNames): readonly CheckSentence[] {
  const dish = nameAmong(dishes, "lentil stew");
  const food = nameAmong(foods, "ground cumin");
  return [
    { shows: "question", words: spokenWords("what comes next") },
    { shows: "number", words: spokenWords("set a timer for fifteen minutes") },
    { shows: "dish", words: spokenWords(`what is left for the ${dish}`) },
    { shows: "food", words: spokenWords(`how much ${food} in all`) },
    { shows: "answer", words: spokenWords("yes please") },
  ];
}

/**
 * What is listened for in a check: all that could be said at this moment, so that a sentence has to be told apart as
 * it will have to be tonight, and the sentences themselves.
 */
export function checkGrammar(now: Grammar, sentences: readonly (readonly string[])[]): Grammar {
  const root = "ear check";
  const own = sentences.map((words): Phrase => ({ kind: "words", text: words.join(" ") }));
  const top: Phrase = { kind: "choice", of: [{ kind: "rule", name: now.root }, ...own] };
  return { root, rules: new Map([...now.rules, [root, top]]) };
}

/** The first name that is short and in plain letters: what an ear does with accents is not its question. */
function nameAmong(names: readonly string[], otherwise: string): string {
  const fits = (words: readonly string[]): boolean =>
    words.length > 0 && words.length <= mostWords && words.every((word) => /^[a-z']+$/.test(word));
  return names.map(spokenWords).find(fits)?.join(" ") ?? otherwise;
}
