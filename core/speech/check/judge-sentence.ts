import type { SentenceLevels } from "../sentence-levels.ts";
import { spokenWords } from "../spoken-words.ts";
import { essence } from "../transcribe/same-words.ts";
import type { Verdict } from "../verdict.ts";

/** An utterance during a check. */
export type CheckedUtterance = {
  readonly verdict: Verdict;
  /** What was written down of it, the address included, whatever it came to; empty where nothing was. */
  readonly words: readonly string[];
  readonly levels: SentenceLevels | null;
};

/** What became of a sentence that was to be said. */
export type Outcome =
  | { readonly kind: "right" }
  /** The sentence was there and the address was not: tonight it would not have counted. */
  | { readonly kind: "address-lost"; readonly heard: string }
  /** It would have been asked back: these are about as likely. */
  | { readonly kind: "torn"; readonly heard: readonly string[] }
  | { readonly kind: "other"; readonly heard: string }
  /** Nothing that could be words. */
  | { readonly kind: "nothing" }
  /** The cook did not want to say it. */
  | { readonly kind: "left-out" };

/** So much of a sentence, in order, makes it this sentence where its address was not understood. */
const sameShare = 0.6;

/** What an utterance came to, against the sentence (without its address) that was to be said. */
export function judgeSentence(
  sentence: readonly string[],
  address: string,
  { verdict, words }: CheckedUtterance,
): Outcome {
  if (verdict.kind === "command") {
    const readings = [verdict.words, ...verdict.rivals];
    const isRight = (reading: readonly string[]): boolean => essence(reading) === essence(sentence);
    if (!readings.some(isRight)) return { kind: "other", heard: verdict.words.join(" ") };
    if (readings.length > 1) return { kind: "torn", heard: readings.map((reading) => reading.join(" ")) };
    return verdict.addressed ? { kind: "right" } : { kind: "address-lost", heard: verdict.words.join(" ") };
  }
  const called = spokenWords(address);
  const isCalled = called.every((word, at) => words[at] === word);
  const said = isCalled ? words.slice(called.length) : words;
  if (said.length === 0) return { kind: "nothing" };
  const heard = words.join(" ");
  const isSame = inOrder(sentence, words) >= sameShare * sentence.length;
  return !isCalled && isSame ? { kind: "address-lost", heard } : { kind: "other", heard };
}

/** How many words of a sentence stand in a text, in their order: the longest common subsequence. */
function inOrder(sentence: readonly string[], text: readonly string[]): number {
  let row: readonly number[] = text.map(() => 0);
  for (const word of sentence) {
    const next: number[] = [];
    text.forEach((other, at) => {
      const both = word === other ? (at === 0 ? 0 : (row[at - 1] ?? 0)) + 1 : 0;
      next.push(Math.max(both, row[at] ?? 0, next[at - 1] ?? 0));
    });
    row = next;
  }
  return row.at(-1) ?? 0;
}
