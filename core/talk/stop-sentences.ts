import { spokenWords } from "../units/spoken-words.ts";

/** The few words that are heard while the caller itself speaks; all of them mean "stop talking". */
const stopWords: readonly string[] = ["stop", "stop talking", "wait", "quiet", "be quiet", "hush"];

/**
 * What is listened for while the caller says `speech`: the stop words, less those that it speaks itself,
 * so that it never interrupts itself.
 */
export function stopSentences(speech: string): readonly string[] {
  const said = new Set(spokenWords(speech));
  return stopWords.filter((sentence) => !spokenWords(sentence).some((word) => said.has(word)));
}
