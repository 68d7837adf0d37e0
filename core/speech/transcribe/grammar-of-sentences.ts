import type { Grammar } from "../grammar.ts";

/** A grammar of these sentences and no others. */
export function grammarOfSentences(sentences: readonly (readonly string[])[]): Grammar {
  const of = sentences.map((words) => ({ kind: "words", text: words.join(" ") }) as const);
  return { root: "sentence", rules: new Map([["sentence", { kind: "choice", of }]]) };
}
