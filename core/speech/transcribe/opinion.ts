import type { TranscriberSize } from "../embedded-assets.ts";
import { type Expectation, isAddressed } from "../expectation.ts";
import { spokenWords } from "../spoken-words.ts";
import type { ListeningMode } from "../recogniser.ts";
import type { Candidate, Found } from "./search.ts";
import { essence } from "./same-words.ts";
import { teenOrTens } from "./teens.ts";
import { writtenForms } from "./written-forms.ts";

/** What a search leaves one to believe. */
export type Opinion =
  /** One sentence; `fit` is how much likelier the model finds what it would write freely, at least about 0. */
  | {
      readonly kind: "clear";
      readonly words: readonly string[];
      readonly fit: number;
      readonly score: number;
    }
  /** Several that are about as likely, the likeliest first. */
  | {
      readonly kind: "torn";
      readonly between: readonly [Candidate, ...(readonly Candidate[])];
      readonly fit: number;
    }
  /** No sentence comes near. */
  | { readonly kind: "other" };

/**
 * How far a sentence may lie from what the model would write, in natural logarithms. After the address: of 226
 * sentences, by seven voices and five altered ones, in the quiet and under a fan (10 dB) and a tap (20 dB), every right
 * one lay within 12 and every wrong one that had no close rival beyond it. Without it any talk may resemble a short
 * command.
 */
export const fitLimit = { addressed: { quick: 12, careful: 16 }, bare: 5 } as const;

/**
 * Without the address a sentence must be likely by itself too: of what is said in another language the model knows
 * nothing, and what it would write is as unlikely as a command. Of 300 Italian and 300 English prompts of a telephone
 * exchange eight fitted a command by the limit above, in one word each; all lie below these but one, which is "No.".
 * All 29 bare commands that were heard right in the quiet lie above.
 */
export const openLimit = { score: -10, oneWord: { fit: 3, score: -4 } } as const;

/**
 * While the caller speaks a word too many only silences it; but its own "Good." came back from the walls of a room as
 * "wait", three times in half an hour; two of those had fits of 2.2 and 3.8 and scores of -6.3 and -4.4. Of 44 such words
 * of one syllable or two, by twelve voices, that were heard right in the quiet, 42 lie within these.
 */
export const stopLimit = { fit: 3.2, score: -5.5 } as const;

/**
 * From here on the cook may have called: of 312 utterances of the address, in the quiet, a room, under fan, tap and
 * clatter (10 dB), 305 lay above it, and of 36 pieces of other talk none.
 */
export const calledLimit = -14;

/**
 * Closer to the likeliest than this, another sentence is a rival. Of 226 sentences, by seven voices and five altered
 * ones, in the quiet and under a fan (10 dB) and a tap (20 dB), no wrong one led by more with the small network; with
 * the large one none of 316 led by more than 2.3, but for a teen ("fifteen") that should have been its tens.
 */
export const rivalWithin = { quick: 4, careful: 2.5, number: 4 } as const;

/** What is believed of an utterance. The address alone is a sentence only where nothing else was written. */
export function opinionOf({ free, candidates }: Found, expected: Expectation, by: TranscriberSize): Opinion {
  const written = wordsOf(free.text, expected);
  const isMore = written.length !== expected.address.length;
  const alone = expected.address.join(" ");
  const sentences = candidates.filter(({ words }) => !isMore || words.join(" ") !== alone);
  const [best] = sentences;
  if (best === undefined) return { kind: "other" };
  // What it wrote freely loses nothing by having been said fast.
  const fit = essence(written) === essence(best.words) ? 0 : free.score - best.score;
  const isFar = isAddressed(expected, best.words)
    ? fit > fitLimit.addressed[by]
    : fit > fitLimit.bare || isUnlikely(best, fit, expected.what.mode);
  if (isFar || letters(best.words) < leastShare * letters(written)) return { kind: "other" };
  const isNear = (other: Candidate): boolean =>
    best.score - other.score <= rivalWithin[teenOrTens(best, other) === null ? by : "number"];
  const near = sentences.slice(1).filter(isNear);
  return near.every(({ words }) => essence(words) === essence(best.words))
    ? { kind: "clear", words: best.words, fit, score: best.score }
    : { kind: "torn", between: [best, ...near], fit };
}

/**
 * A network that writes more than twice as much has heard another sentence, however unlikely it finds its own: of two
 * who spoke at once one said "next step", eleven words were written, and "yes" would have been believed.
 */
const leastShare = 0.5;

export const letters = (words: readonly string[]): number => words.join("").length;

/** Of a sentence without the address. */
function isUnlikely({ words, score }: Candidate, fit: number, mode: ListeningMode): boolean {
  if (mode === "open" && score < openLimit.score) return true;
  const limit = mode === "open" ? openLimit.oneWord : stopLimit;
  return words.length === 1 && (fit > limit.fit || score < limit.score);
}

/** The words of a text that a transcriber wrote, the address as it is written in the grammar. */
export function wordsOf(text: string, { address }: Expectation): readonly string[] {
  const words = spokenWords(text);
  return words.map((word, at) => {
    const called = address[at];
    return called !== undefined && writtenForms(called).includes(word) ? called : word;
  });
}
