import { median } from "./median.ts";

/** How loud the cook speaks, learnt from sentences that were accepted: what the radio says teaches nothing. */
export type CookLevel = {
  /** One loud frame of the open sentence, dBFS in the speech band. */
  readonly hear: (levelDb: number) => void;
  /** The sentence is over, and was accepted or not. */
  readonly endSentence: (was: "accepted" | "refused") => void;
  /** Median over the last accepted sentences of the median of their loud frames; null before the first. */
  readonly levelDb: () => number | null;
};

/** So many sentences are remembered: a cook who has moved to the sink is known there after three. */
const sentencesKept = 5;

/** Knows nothing of the cook yet. */
export function createCookLevel(): CookLevel {
  let frames: number[] = [];
  let sentences: readonly number[] = [];
  return {
    hear: (levelDb) => void frames.push(levelDb),
    endSentence: (was) => {
      const level = median(frames);
      frames = [];
      if (was === "accepted" && level !== null) sentences = [...sentences, level].slice(-sentencesKept);
    },
    levelDb: () => median(sentences),
  };
}
