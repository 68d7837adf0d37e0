import { loudness } from "../loudness.ts";
import { frameMs, frameSamples } from "../samples.ts";

/** Quieter than the loudest frame by more than this is a pause. */
const pauseDb = 25;

/**
 * A voice that stands this far above the quietest tenth of an utterance loses nothing to the noise beside it; this far,
 * and there is no noise to speak of: a tap 20 dB below a voice leaves about 30.
 */
const [clearDb, quietDb] = [30, 35];

/** How an utterance is filled. */
export type Filled = {
  /** Seconds in which something sounds: pauses do not count, unless noise fills them. */
  readonly spokenS: number;
  /** Whether the voice stands clear of the room, so that nothing of it is lost. */
  readonly isClear: boolean;
  /** Whether there is nothing beside it. */
  readonly isQuiet: boolean;
};

/** @param utterance mono, 16 kHz, with a little of the room before it */
export function filled(utterance: Float32Array): Filled {
  const levels: number[] = [];
  for (let at = 0; at + frameSamples <= utterance.length; at += frameSamples)
    levels.push(loudness(utterance.subarray(at, at + frameSamples)));
  levels.sort((a, b) => a - b);
  const loudest = levels.at(-1) ?? -Infinity;
  const quietest = levels[Math.floor(levels.length / 10)] ?? loudest;
  const spoken = levels.filter((level) => level > loudest - pauseDb).length;
  const above = loudest - quietest;
  return { spokenS: (spoken * frameMs) / 1000, isClear: above >= clearDb, isQuiet: above >= quietDb };
}
