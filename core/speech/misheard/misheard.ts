import type { Instant } from "../../units/quantity.ts";

/**
 * What came of a sentence.
 * - nothing: the address was heard, and then no sentence that could be obeyed.
 * - asked-back: the ear was torn between sentences, and the caller asked which was meant.
 * - taken-back: something was done or asked for it, and the cook undid it, corrected it or said no.
 */
export type CameTo = "nothing" | "asked-back" | "taken-back";

/** One sentence in the record of what was misheard; its sound is kept beside it. */
export type Misheard = {
  readonly id: string;
  readonly at: Instant;
  /** What the ear made of it, without the address; empty where that was nothing. */
  readonly heard: string;
  readonly cameTo: CameTo;
  /** What it may have been instead, the likeliest first. */
  readonly likely: readonly string[];
  /** What the cook says it was; null where they have not said. May be what was heard. */
  readonly meant: string | null;
};

/** What the cook typed, as a sentence is written; null where that is nothing. */
export function meaning(typed: string): string | null {
  const plain = typed.trim().replaceAll(/\s+/g, " ").toLowerCase().slice(0, longestMeantLetters);
  return plain === "" ? null : plain;
}

/** Longer than any sentence of the phrasebook. */
export const longestMeantLetters = 200;
