import { type Phone, phones } from "./phones.ts";

/**
 * Speech that is no command has to be heard as something, or the nearest command takes it. These are 39
 * words of one phone each; a loop over them follows any speech at all, and wins wherever the sound is not
 * a sentence of the grammar. The tilde keeps them apart from every word a cook can say.
 */
export const chatterWords: readonly { readonly word: string; readonly phone: Phone }[] = phones.map(
  (phone) => ({
    word: `~${phone.toLowerCase()}`,
    phone,
  }),
);

/** True for a word of the chatter loop. */
export function isChatter(word: string): boolean {
  return word.startsWith("~");
}

/** True for what the recogniser writes for silence, noise and breath: "<sil>", "[NOISE]", "(NULL)". */
export function isFiller(word: string): boolean {
  return /^[<[(]/.test(word);
}

/** The words somebody said: fillers and chatter dropped, the mark of a second pronunciation ("the(2)") cut. */
export function withoutFillers(words: readonly string[]): readonly string[] {
  return words
    .filter((word) => !isFiller(word) && !isChatter(word))
    .map((word) => word.replace(/\(\d+\)$/, ""));
}
