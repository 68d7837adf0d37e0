import { defaultEndpointer } from "./endpointer.ts";

/** What suits the ear to one cook and one microphone. */
export type EarTuning = {
  /** By how much the microphone is made louder (softer below 0), in dB. */
  readonly gainDb: number;
  /** Nothing quieter than this is speech once the gain is in it: dBFS in the speech band. */
  readonly quietestDb: number;
};

/** The ear of a cook of whom nothing is known. */
export const usualTuning: EarTuning = { gainDb: 0, quietestDb: defaultEndpointer.quietestDb };

/** A block made louder by so many dB; what would go beyond full scale stays there. */
export function amplified(block: Float32Array, gainDb: number): Float32Array {
  if (gainDb === 0) return block;
  const factor = 10 ** (gainDb / 20);
  return block.map((sample) => Math.max(-1, Math.min(1, sample * factor)));
}
