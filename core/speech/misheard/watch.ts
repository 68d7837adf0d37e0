import type { Grammar } from "../grammar.ts";
import type { Instant } from "../../units/quantity.ts";
import { between } from "../../units/quantity.ts";
import { takenBackWithinS } from "./limits.ts";
import type { CameTo } from "./misheard.ts";

/** A sentence whose sound was handed out, held in memory until it is known whether it was misheard. */
export type Sentence = {
  readonly at: Instant;
  /** Mono, 16 kHz. */
  readonly samples: Float32Array;
  readonly heard: string;
  /** What the ear was torn between, besides. */
  readonly rivals: readonly string[];
  /** What could be said when it was. */
  readonly grammar: Grammar;
};

/**
 * What an answer was.
 * - deed: something was done, or asked before it is done.
 * - words: nothing but an answer.
 * - taken-back: the cook undid or corrected the last thing, or said no to it.
 */
export type Answer = CameTo | "deed" | "words";

/** The one sentence that may still be taken back; null where there is none. */
export type Watch = { readonly last: Sentence | null };

/** Nothing is held. */
export const idleWatch: Watch = { last: null };

/** What is to be kept now. */
export type Keep = { readonly sentence: Sentence; readonly cameTo: CameTo };

/** One answer of the caller's to a voice, a touch or a typed sentence. */
export type Answered = {
  readonly at: Instant;
  /** The sentence answered; null where it was not spoken, or its sound was not handed out. */
  readonly sentence: Sentence | null;
  readonly answer: Answer;
};

/** Follows one answer. Whatever is neither kept nor the last sentence is forgotten. */
export function watchAnswer(
  { last }: Watch,
  { at, sentence, answer }: Answered,
): { readonly watch: Watch; readonly keep: Keep | null } {
  switch (answer) {
    case "taken-back": {
      const isFresh = last !== null && between(last.at, at) <= takenBackWithinS;
      return { watch: idleWatch, keep: isFresh ? { sentence: last, cameTo: answer } : null };
    }
    case "nothing":
    case "asked-back":
      return { watch: idleWatch, keep: sentence === null ? null : { sentence, cameTo: answer } };
    case "deed":
      // A touch since then is what an "undo" would take back, and no longer the sentence.
      return { watch: { last: sentence }, keep: null };
    case "words":
      return { watch: { last: sentence ?? last }, keep: null };
  }
}

/** Forgets a sentence that nobody has taken back in time. */
export function forgetOld({ last }: Watch, now: Instant): Watch {
  return last !== null && between(last.at, now) > takenBackWithinS ? idleWatch : { last };
}
