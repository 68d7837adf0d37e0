import { createOffsetFilter, createSpeechMeter } from "./loudness.ts";
import { createFramer, frameSamples, listeningRate } from "./samples.ts";

/** What cleans and measures a stream at 16 kHz; each keeps a state from block to block. */
export type Front = {
  /** Into frames of 20 ms. */
  readonly cut: (block: Float32Array) => readonly Float32Array[];
  readonly removeOffset: (block: Float32Array) => Float32Array;
  /** dBFS in the speech band. */
  readonly meter: (frame: Float32Array) => number;
};

/** A front that has heard nothing yet. */
export function createFront(): Front {
  return {
    cut: createFramer(frameSamples),
    removeOffset: createOffsetFilter(listeningRate),
    meter: createSpeechMeter(listeningRate),
  };
}
