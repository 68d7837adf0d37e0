import { type Expectation, isAddressed } from "../expectation.ts";
import { frameMs, joinSamples } from "../samples.ts";
import type { Verdict } from "../verdict.ts";
import { longestKeptS } from "./limits.ts";

/** Which sounds leave the recogniser: none, or those of sentences that may turn out to be misheard. */
export type HandOut = "never" | "maybe-misheard";

/** The sound of one sentence, handed out so that it may be kept if it turns out to be misheard. */
export type HeardSound = {
  /** Mono, 16 kHz, in [-1, 1]; at most 12 s, the beginning. */
  readonly samples: Float32Array;
  /** What the ear wrote down, without the address; empty where that was nothing more. */
  readonly words: readonly string[];
};

/** One utterance that is over. */
export type Over = {
  /** 20 ms each. */
  readonly frames: readonly Float32Array[];
  readonly verdict: Verdict;
  /** All that was written down of it, the address before it where that was heard. */
  readonly words: readonly string[];
  readonly expected: Expectation;
};

/**
 * The sound of an utterance that was meant for the kitchen; null for everything else, which is nobody's business:
 * other people's talk, what merely resembled a command, the address alone. Meant for the kitchen is what was taken
 * for a command (one that began with the address, where the caller itself spoke meanwhile), and what came to nothing
 * though the whole address was heard at its beginning.
 */
export function soundToHandOut({ frames, verdict, words, expected }: Over): HeardSound | null {
  const samples = (): Float32Array => joinSamples(frames.slice(0, (longestKeptS * 1000) / frameMs));
  switch (verdict.kind) {
    case "command":
      return verdict.addressed || expected.what.mode !== "stop-only"
        ? { samples: samples(), words: verdict.words }
        : null;
    case "address-only":
      return null;
    case "none":
      return verdict.why === "doubtful" && isAddressed(expected, words)
        ? { samples: samples(), words: words.slice(expected.address.length) }
        : null;
  }
}
