import { loudness } from "../../core/speech/loudness.ts";
import { listeningRate } from "../../core/speech/samples.ts";

/** Time constant of the envelope, the time that speech goes on counting after it, and the margin, as P.56 sets them. */
const envelopeS = 0.03;
const hangoverS = 0.2;
const marginDb = 15.9;

/** Thresholds from 0 dBFS down to -90 dBFS, each half of the one before: 16 of them. */
const thresholds = Array.from({ length: 16 }, (_, step) => 2 ** -step);

/**
 * The active speech level: the loudness of speech while somebody speaks, pauses over 0.2 s left out.
 * @param samples mono, in [-1, 1], 16 kHz
 * @returns dBFS; -Infinity where nothing is loud enough to be speech
 * Source: ITU-T Recommendation P.56, method B (envelope smoothed twice over 30 ms, hangover 0.2 s, the threshold that
 * lies 15.9 dB below the level it gives); figures from memory.
 */
export function activeLevel(samples: Float32Array): number {
  const { power, active } = countActive(samples);
  if (power === 0) return -Infinity;
  let before: { readonly level: number; readonly gap: number } | null = null;
  for (const [step, count] of active.entries()) {
    if (count === 0) continue;
    const level = 10 * Math.log10(power / count);
    const gap = level - 20 * Math.log10(thresholds[step] ?? 1);
    if (gap >= marginDb) {
      if (before === null) return level;
      const share = (marginDb - before.gap) / (gap - before.gap);
      return before.level + share * (level - before.level);
    }
    before = { level, gap };
  }
  return before?.level ?? -Infinity;
}

/** Sum of squares, and for each threshold how many samples lie above it or within the hangover after it. */
function countActive(samples: Float32Array): { readonly power: number; readonly active: Int32Array } {
  const keep = Math.exp(-1 / (listeningRate * envelopeS));
  const hangover = Math.round(listeningRate * hangoverS);
  const active = new Int32Array(thresholds.length);
  const quiet = new Int32Array(thresholds.length).fill(hangover);
  let power = 0;
  let smooth = 0;
  let envelope = 0;
  for (const sample of samples) {
    power += sample * sample;
    smooth = keep * smooth + (1 - keep) * Math.abs(sample);
    envelope = keep * envelope + (1 - keep) * smooth;
    for (let step = 0; step < thresholds.length; step++) {
      const since = envelope >= (thresholds[step] ?? 1) ? 0 : (quiet[step] ?? 0) + 1;
      quiet[step] = since;
      if (since <= hangover) active[step] = (active[step] ?? 0) + 1;
    }
  }
  return { power, active };
}

/** Where the words lie in a recording: from the first to the last 20 ms that are within 30 dB of its active level. */
export function spanOfSpeech(samples: Float32Array): readonly [from: number, to: number] {
  const frame = listeningRate / 50;
  const floor = activeLevel(samples) - 30;
  let from = samples.length;
  let to = 0;
  for (let at = 0; at < samples.length; at += frame) {
    if (loudness(samples.subarray(at, at + frame)) < floor) continue;
    from = Math.min(from, at);
    to = Math.min(samples.length, at + frame);
  }
  return [Math.min(from, to), to];
}
