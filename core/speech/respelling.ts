import { err, ok, type Result } from "../units/result.ts";
import type { Grammar, Phrase } from "./grammar.ts";
import { spokenWords } from "./spoken-words.ts";

/** A word that a cook says otherwise than it is read: "quinoa" as "keen wah". */
export type Respelling = {
  /** One word, as `spokenWords` gives it. */
  readonly word: string;
  /** One to four words, as `spokenWords` gives them, that sound like it when they are read. */
  readonly like: string;
};

/** More than these no cook has, and each makes the grammar longer. */
export const mostRespellings = 50;

const mostWords = 4;
const longestWord = 30;

/**
 * What a cook has written, made ready to be listened for.
 * Fails with one sentence that says what is wrong and what to write.
 */
export function readRespelling(word: string, like: string): Result<Respelling, string> {
  const [one = "", ...more] = spokenWords(word);
  const sounds = spokenWords(like);
  if (one === "") return err("Write the word itself first, as it stands in the recipe.");
  if (more.length > 0) return err(`"${spokenWords(word).join(" ")}" is several words; write one of them.`);
  if (sounds.length === 0) return err(`Write how you say "${one}", in words that sound like it.`);
  if (sounds.length > mostWords) return err(`Write how you say "${one}" in four words or fewer.`);
  if ([one, ...sounds].some((each) => each.length > longestWord))
    return err("A word of more than thirty letters is too long; write it in parts.");
  if ([one, ...sounds].some((each) => /\d/.test(each))) return err("Write numbers in letters.");
  if (sounds.join(" ") === one)
    return err(`That is how "${one}" is read already; write what sounds like it.`);
  return ok({ word: one, like: sounds.join(" ") });
}

/** The same grammar, with each respelt word also as it sounds; the very same where none of it is in it. */
export function respelt(grammar: Grammar, respellings: readonly Respelling[]): Grammar {
  const ways = waysOf(respellings);
  if (ways.size === 0) return grammar;
  let isChanged = false;
  const rules = new Map<string, Phrase>();
  for (const [name, phrase] of grammar.rules) {
    const said = saidToo(phrase, ways);
    isChanged ||= said !== phrase;
    rules.set(name, said);
  }
  return isChanged ? { ...grammar, rules } : grammar;
}

/** Words that were heard, each respelling turned back into the word that it stands for. */
export function asWritten(words: readonly string[], respellings: readonly Respelling[]): readonly string[] {
  const back = respellings
    .map(({ word, like }) => ({ word, sounds: like.split(" ") }))
    .sort((a, b) => b.sounds.length - a.sounds.length);
  const written: string[] = [];
  for (let at = 0; at < words.length;) {
    const found = back.find(({ sounds }) => sounds.every((sound, each) => words[at + each] === sound));
    written.push(found?.word ?? words[at] ?? "");
    at += found?.sounds.length ?? 1;
  }
  return written;
}

/** A text for the voice, each respelt word as it sounds, so that the caller says it as the cook does. */
export function asSaid(text: string, respellings: readonly Respelling[]): string {
  return respellings.reduce(
    (said, { word, like }) =>
      said.replaceAll(new RegExp(`(?<![\\p{L}\\p{N}'])${word}(?![\\p{L}\\p{N}'])`, "giu"), like),
    text,
  );
}

type Ways = ReadonlyMap<string, readonly string[]>;

function waysOf(respellings: readonly Respelling[]): Ways {
  const ways = new Map<string, readonly string[]>();
  for (const { word, like } of respellings) ways.set(word, [...(ways.get(word) ?? []), like]);
  return ways;
}

function saidToo(phrase: Phrase, ways: Ways): Phrase {
  switch (phrase.kind) {
    case "words":
      return wordsSaidToo(phrase, ways);
    case "rule":
      return phrase;
    case "optional": {
      const of = saidToo(phrase.of, ways);
      return of === phrase.of ? phrase : { ...phrase, of };
    }
    case "sequence":
    case "choice": {
      const of = phrase.of.map((part) => saidToo(part, ways));
      return of.every((part, at) => part === phrase.of[at]) ? phrase : { ...phrase, of };
    }
  }
}

function wordsSaidToo(phrase: Extract<Phrase, { readonly kind: "words" }>, ways: Ways): Phrase {
  const words = spokenWords(phrase.text);
  if (!words.some((word) => ways.has(word))) return phrase;
  const of = words.map((word): Phrase => {
    const said = [word, ...(ways.get(word) ?? [])].map((text): Phrase => ({ kind: "words", text }));
    const [only] = said;
    return said.length === 1 && only !== undefined ? only : { kind: "choice", of: said };
  });
  return { kind: "sequence", of };
}
