import { loudness } from "./loudness.ts";

/** Watches a stream, before any filter, for sound that breaks off from one sample to the next, as a lost link does. */
export type BreakOff = {
  readonly hear: (block: Float32Array) => void;
  /** Whether all is dead now and a voice was loud to the last; in a room it would have died away. */
  readonly isBroken: () => boolean;
};

/** Sound that has not changed for so long, in seconds, comes from no microphone. */
const deadS = 0.1;

/** The stretch before, in seconds, whose level tells how it ended. */
const beforeS = 0.02;

/** Ended less than this below the loudest stretch of the last seconds, it did not die away. */
const withinDb = 12;

/** The loudest stretch is forgotten by so much a second. */
const forgottenDbPerS = 6;

/** Quieter than this (dBFS) nobody spoke. */
const voiceDb = -60;

/** @param rate of the samples, in Hz */
export function createBreakOff(rate: number): BreakOff {
  const before = new Float32Array(Math.round(beforeS * rate));
  let [at, last, dead, loudestDb, endedDb] = [0, 0, 0, -Infinity, -Infinity];
  const take = (sample: number): void => {
    dead = sample === last ? dead + 1 : 0;
    last = sample;
    if (dead === 1) endedDb = loudness(before);
    if (dead > 0) return;
    before[at] = sample;
    at = (at + 1) % before.length;
    if (at === 0) loudestDb = Math.max(loudestDb - forgottenDbPerS * beforeS, loudness(before));
  };
  return {
    hear: (block) => block.forEach(take),
    isBroken: () => dead >= deadS * rate && endedDb > voiceDb && endedDb > loudestDb - withinDb,
  };
}
