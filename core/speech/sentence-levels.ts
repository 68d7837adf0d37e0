import type { EndpointerState } from "./endpointer.ts";
import { createSpeechMeter, loudness } from "./loudness.ts";
import { listeningRate } from "./samples.ts";

/** How a sentence sounded and what the room was like before it, in dBFS, the gain included. */
export type SentenceLevels = {
  /** The voice over the whole band while it speaks, pauses left out. */
  readonly voiceDb: number;
  /** The same in the speech band, where the endpointer measures. */
  readonly bandDb: number;
  /** The loudest sample. */
  readonly peakDb: number;
  /** In the speech band: what nine tenths of the moment before stay below; null where too little of it is known. */
  readonly noiseDb: number | null;
};

/**
 * Frames this much softer than the loudest are pauses. The active speech level of ITU-T P.56 (figures from memory)
 * leaves pauses out too; over seven voices the two lie within 2 dB of each other.
 */
const activeWithinDb = 25;

/** Fewer frames than this say nothing of a room. */
const fewestFrames = 10;

/** Measures an utterance's frames of 20 ms at 16 kHz; null where they are silent. */
export function sentenceLevels(
  frames: readonly Float32Array[],
  noiseDb: number | null,
): SentenceLevels | null {
  const meter = createSpeechMeter(listeningRate);
  const levels = frames.map((frame) => ({ whole: loudness(frame), band: meter(frame) }));
  const loudest = levels.reduce((most, { whole }) => Math.max(most, whole), -Infinity);
  if (loudest === -Infinity) return null;
  const active = levels.filter(({ whole }) => whole > loudest - activeWithinDb);
  const peak = frames.reduce(
    (most, frame) => frame.reduce((high, sample) => Math.max(high, Math.abs(sample)), most),
    0,
  );
  return {
    voiceDb: meanPowerDb(active.map(({ whole }) => whole)),
    bandDb: meanPowerDb(active.map(({ band }) => band)),
    peakDb: 20 * Math.log10(peak),
    noiseDb,
  };
}

/** How loud the room was before the frame `from`, as far as the endpointer remembers it. */
export function noiseBefore({ frame, recent }: EndpointerState, from: number): number | null {
  const before = recent.slice(0, Math.max(0, from - (frame - recent.length)));
  if (before.length < fewestFrames) return null;
  const sorted = before.map(({ levelDb }) => levelDb).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length * 0.9)] ?? null;
}

const meanPowerDb = (levelsDb: readonly number[]): number =>
  10 * Math.log10(levelsDb.reduce((sum, level) => sum + 10 ** (level / 10), 0) / levelsDb.length);
