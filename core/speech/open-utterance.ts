import type { EndpointerState } from "./endpointer.ts";
import { noiseBefore } from "./sentence-levels.ts";

/** Speech that has not ended yet. */
export type OpenUtterance = {
  readonly from: number;
  /** How loud the room was before it; null where that is not known. */
  readonly noiseDb: number | null;
  readonly frames: Float32Array[];
  /** So many of the frames came before a louder voice began; 0 while all may be one voice. */
  framesBefore: number;
  /**
   * Frames of speech that must still come, or nobody has spoken: it began while the caller spoke, and what is kept of
   * that may be the caller's own last word.
   */
  framesWanted: number;
  partial: readonly string[];
  shown: string;
  /** Whether nothing of it can have been taken for a pause, as far as is known. */
  isAll: boolean;
  /** The pause, or the second look at it, that the recogniser was last asked about; null while somebody speaks. */
  look: number | null;
};

/** One that begins at this frame and has no sound yet. */
export function openUtterance(from: number, state: EndpointerState): OpenUtterance {
  return {
    from,
    noiseDb: noiseBefore(state, from),
    frames: [],
    framesBefore: 0,
    framesWanted: 0,
    partial: [],
    shown: "",
    isAll: true,
    look: null,
  };
}
