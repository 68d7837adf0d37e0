import type { Grammar } from "../../core/speech/grammar.ts";
import type { RoomSecond } from "../../core/speech/room-noise.ts";
import type { SentenceLevels } from "../../core/speech/sentence-levels.ts";
import type { EarTuning } from "../../core/speech/tuning.ts";
import type { Verdict } from "../../core/speech/verdict.ts";

/** A sentence said while the ear is tried out. */
export interface TrialHeard {
  readonly verdict: Verdict;
  /** What was written down of it, the address included, whatever it came to. */
  readonly words: readonly string[];
  readonly levels: SentenceLevels | null;
  /** How long ago it began, in ms. */
  readonly beganAgoMs: number;
}

/** While the cook tries out the ear it listens for this, so tuned, and hands over what it hears: nothing is obeyed. */
export interface EarTrial {
  /** @param usual what it would listen for else */
  readonly grammar: (usual: Grammar) => Grammar;
  readonly mode: "addressed" | "open";
  readonly tuning: EarTuning;
  readonly onHeard: (heard: TrialHeard) => void;
  /** Loudness of the microphone ten times a second, dBFS, the gain included. */
  readonly onLevel: (dbfs: number) => void;
  /** What the room was like in the last second. */
  readonly onRoom: (second: RoomSecond) => void;
}
