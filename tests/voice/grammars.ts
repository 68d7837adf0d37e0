import type { Grammar, Phrase } from "../../core/speech/grammar.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import { spokenWords } from "../../core/speech/spoken-words.ts";

/** A grammar of these sentences and no others. */
export const grammarOf = (...sentences: readonly string[]): Grammar => ({
  root: "sentence",
  rules: new Map([["sentence", { kind: "choice", of: sentences.map((text) => ({ kind: "words", text })) }]]),
});

/** Listening for a grammar without an address, unless it is given. */
export const listenTo = (grammar: Grammar, how: Partial<ListenFor> = {}): ListenFor => ({
  grammar,
  address: null,
  mode: "open",
  stopSentences: [],
  ...how,
});

/** Whether the rules allow a sentence, read off them in the plainest way there is. */
export function allows({ root, rules }: Grammar, sentence: string): boolean {
  const words = spokenWords(sentence);
  const endsOf = (phrase: Phrase, from: number): readonly number[] => {
    switch (phrase.kind) {
      case "words": {
        const own = spokenWords(phrase.text);
        return own.every((word, at) => words[from + at] === word) ? [from + own.length] : [];
      }
      case "rule":
        return endsOf(rules.get(phrase.name) ?? { kind: "choice", of: [] }, from);
      case "optional":
        return [from, ...endsOf(phrase.of, from)];
      case "sequence":
        return phrase.of.reduce<readonly number[]>(
          (ends, part) => [...new Set(ends.flatMap((end) => endsOf(part, end)))],
          [from],
        );
      case "choice":
        return [...new Set(phrase.of.flatMap((part) => endsOf(part, from)))];
    }
  };
  return endsOf({ kind: "rule", name: root }, 0).includes(words.length);
}
