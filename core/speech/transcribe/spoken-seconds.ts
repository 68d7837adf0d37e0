import { loudness } from "../loudness.ts";
import { frameMs, frameSamples } from "../samples.ts";

/** Quieter than the loudest frame by more than this is a pause. */
const pauseDb = 25;

/**
 * Seconds of an utterance in which something sounds: pauses do not count, unless noise fills them.
 * @param utterance mono, 16 kHz
 */
export function spokenSeconds(utterance: Float32Array): number {
  const levels: number[] = [];
  for (let at = 0; at + frameSamples <= utterance.length; at += frameSamples)
    levels.push(loudness(utterance.subarray(at, at + frameSamples)));
  const loudest = levels.reduce((most, level) => Math.max(most, level), -Infinity);
  return (levels.filter((level) => level > loudest - pauseDb).length * frameMs) / 1000;
}
