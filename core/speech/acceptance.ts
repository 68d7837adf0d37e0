import { isChatter, isFiller, withoutFillers } from "./chatter.ts";
import type { ListeningMode } from "./jsgf.ts";
import type { Hypothesis } from "./recogniser.ts";
import { spokenWords } from "./spoken-words.ts";

/** What one utterance came to. */
export type Verdict =
  /** A sentence of the grammar, without the address. */
  | {
      readonly kind: "command";
      readonly words: readonly string[];
      readonly confidence: number;
      readonly addressed: boolean;
    }
  /** The address alone: somebody has turned to the caller and may now go on. */
  | { readonly kind: "address-only" }
  /** No command, and why: nothing but chatter, or too unlike a command to act on. */
  | { readonly kind: "none"; readonly why: "chatter" | "doubtful" };

/** When a sentence is believed, by engine. */
export type Acceptance = {
  /** Least confidence after the address. */
  readonly addressed: number;
  /** Least confidence with no address: any speech in the room may resemble a short command. */
  readonly open: number;
  /** Least confidence for the few words heard while the caller speaks. */
  readonly stopOnly: number;
};

/**
 * Confidence limits for the embedded engine. Of 144 addressed sentences heard right, the lowest lay at 0.580; of other
 * people's speech that passed for an addressed sentence, the highest at 0.545. Without the address, sentences heard
 * right lay at 0.607 and above. By tests/bench/voice.bench.ts.
 */
export const embeddedAcceptance: Acceptance = { addressed: 0.565, open: 0.6, stopOnly: 0.6 };

/** Decides what an utterance came to. Total: an empty hypothesis is chatter. */
export function judge(
  hypothesis: Hypothesis,
  address: string | null,
  mode: ListeningMode,
  acceptance: Acceptance,
): Verdict {
  const words = withoutFillers(hypothesis.words.map(({ word }) => word));
  if (words.length === 0 || hypothesis.words.some(({ word }) => isChatter(word)))
    return { kind: "none", why: "chatter" };
  const called = address === null ? [] : spokenWords(address);
  const addressed = called.length > 0 && called.every((word, at) => words[at] === word);
  const said = addressed ? words.slice(called.length) : words;
  if (said.length === 0) return { kind: "address-only" };
  if (mode === "addressed" && !addressed) return { kind: "none", why: "chatter" };
  const confidence = confidenceOf(hypothesis);
  if (confidence < leastConfidence(mode, addressed, acceptance)) return { kind: "none", why: "doubtful" };
  return { kind: "command", words: said, confidence, addressed };
}

function leastConfidence(mode: ListeningMode, addressed: boolean, acceptance: Acceptance): number {
  if (addressed) return acceptance.addressed;
  return mode === "stop-only" ? acceptance.stopOnly : acceptance.open;
}

/**
 * How well the words account for the sound, 0 to 1: the share of the time between the first and the last word
 * that is words and not filler, times exp(-100 c), c being the mean -ln p a frame of 10 ms of those words.
 */
export function confidenceOf(hypothesis: Hypothesis): number {
  const spoken = hypothesis.words.filter(({ word }) => !isFiller(word));
  const first = spoken[0];
  const last = spoken.at(-1);
  if (first === undefined || last === undefined) return 0;
  const span = last.startS + last.lengthS - first.startS;
  const inWords = spoken.reduce((sum, each) => sum + each.lengthS, 0);
  const cost = spoken.reduce((sum, each) => sum - Math.log(Math.max(1e-300, each.probability)), 0);
  const costAFrame = inWords > 0 ? cost / (inWords * 100) : 0;
  return (span > 0 ? Math.min(1, inWords / span) : 0) * Math.exp(-100 * costAFrame);
}
