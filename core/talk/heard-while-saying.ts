import type { Muted } from "../speech/listening.ts";
import { spokenWords } from "../units/spoken-words.ts";

/** The few words that are heard while the caller itself speaks; all of them mean "stop talking". */
const stopSentences: readonly string[] = ["stop", "stop talking", "wait", "quiet", "be quiet", "hush"];

/**
 * What is heard while the caller says `speech`: the stop sentences and whatever follows the address, less what it
 * speaks itself, so that it neither interrupts nor obeys itself.
 * @param address null where nobody may call by voice
 */
export function heardWhileSaying(speech: string, address: string | null): Muted {
  const said = new Set(spokenWords(speech));
  return {
    stopSentences: stopSentences.filter((sentence) => !spokenWords(sentence).some((word) => said.has(word))),
    address: spokenWords(address ?? "").every((word) => said.has(word)) ? null : address,
  };
}
