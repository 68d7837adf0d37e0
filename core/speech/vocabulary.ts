import { reachableRules } from "./check-grammar.ts";
import type { Phrase } from "./grammar.ts";
import type { ListenFor } from "./recogniser.ts";
import { spokenWords } from "./spoken-words.ts";

/** Every word that may be heard, the address first; of a grammar that cannot be read at all, none. */
export function vocabulary({ grammar, address, stopSentences }: ListenFor): ReadonlySet<string> {
  const rules = reachableRules(grammar);
  const ofRules = rules.ok ? rules.value.flatMap(([, phrase]) => wordsOf(phrase)) : [];
  return new Set([...[address ?? "", ...stopSentences].flatMap(spokenWords), ...ofRules]);
}

function wordsOf(phrase: Phrase): readonly string[] {
  switch (phrase.kind) {
    case "words":
      return spokenWords(phrase.text);
    case "rule":
      return [];
    case "optional":
      return wordsOf(phrase.of);
    case "sequence":
    case "choice":
      return phrase.of.flatMap(wordsOf);
  }
}
