import { createBreakOff } from "./break-off.ts";
import { createOffsetFilter, createSpeechMeter } from "./loudness.ts";
import { createFramer, frameSamples, listeningRate } from "./samples.ts";

/** What cleans and measures a stream at 16 kHz; each keeps a state from block to block. */
export type Front = {
  /** Into frames of 20 ms. */
  readonly cut: (block: Float32Array) => readonly Float32Array[];
  readonly removeOffset: (block: Float32Array) => Float32Array;
  /** Whether what came in last broke off in the middle of a voice. */
  readonly isBroken: () => boolean;
  /** dBFS in the speech band. */
  readonly meter: (frame: Float32Array) => number;
};

/** A front that has heard nothing yet. */
export function createFront(): Front {
  const breakOff = createBreakOff(listeningRate);
  const removeOffset = createOffsetFilter(listeningRate);
  return {
    isBroken: breakOff.isBroken,
    removeOffset: (block) => {
      breakOff.hear(block);
      return removeOffset(block);
    },
    cut: createFramer(frameSamples),
    meter: createSpeechMeter(listeningRate),
  };
}
