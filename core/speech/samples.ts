/** The rate at which everything in this folder listens, in Hz; audio of another rate is resampled first. */
export const listeningRate: number = 16_000;

/** Samples in one frame of the endpointer: 20 ms at 16 kHz. */
export const frameSamples = 320;

/** Length of one frame in milliseconds. */
export const frameMs = (frameSamples * 1000) / listeningRate;

/** 16-bit integers to [-1, 1). */
export function fromInt16(samples: Int16Array): Float32Array {
  return Float32Array.from(samples, (sample) => sample / 0x8000);
}

/** [-1, 1] to 16-bit integers, clipped, rounded to the nearest. */
export function toInt16(samples: Float32Array): Int16Array {
  return Int16Array.from(samples, (sample) =>
    Math.max(-0x8000, Math.min(0x7fff, Math.round(sample * 0x8000))),
  );
}

/**
 * Cuts a stream of blocks of any length into frames of one length, keeping what is left over for the next block.
 * @returns a function from a block to the whole frames now available
 */
export function createFramer(length: number): (block: Float32Array) => readonly Float32Array[] {
  let frame = new Float32Array(length);
  let filled = 0;
  return (block) => {
    const frames: Float32Array[] = [];
    for (let at = 0; at < block.length;) {
      const taken = Math.min(length - filled, block.length - at);
      frame.set(block.subarray(at, at + taken), filled);
      at += taken;
      filled += taken;
      if (filled === length) {
        frames.push(frame);
        frame = new Float32Array(length);
        filled = 0;
      }
    }
    return frames;
  };
}

/** Joins blocks end to end. */
export function joinSamples(blocks: readonly Float32Array[]): Float32Array {
  const joined = new Float32Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    joined.set(block, at);
    at += block.length;
  }
  return joined;
}
