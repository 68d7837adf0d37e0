import { reachableRules } from "./check-grammar.ts";
import type { Grammar, Phrase } from "./grammar.ts";
import { spokenWords } from "./spoken-words.ts";

/** Every word that some sentence of the grammar uses. Empty where the grammar cannot be read at all. */
export function vocabulary(grammar: Grammar): ReadonlySet<string> {
  const rules = reachableRules(grammar);
  if (!rules.ok) return new Set();
  return new Set(rules.value.flatMap(([, phrase]) => [...wordsOf(phrase)]));
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
