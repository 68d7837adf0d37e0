import { resample } from "../../core/speech/resample.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import type { Recording } from "../../core/speech/wav.ts";
import { createChance } from "./seeded.ts";

/**
 * A microphone with a fault, or one of another rate than the recogniser's.
 * @param samples what was said, mono, 16 kHz; left as it is
 * @param seed what chance there is follows from it
 */
export type Device = {
  readonly name: string;
  readonly record: (samples: Float32Array, seed: number) => Recording;
};

/** How often and how long a link loses sound. */
export type DropOuts = {
  readonly everyS: number;
  readonly shortestS: number;
  readonly longestS: number;
  readonly seed: number;
};

/** Cut off where the loudest sample is so many dB over full scale. */
export function clipped(samples: Float32Array, overDb: number): Float32Array {
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const gain = peak === 0 ? 1 : 10 ** (overDb / 20) / peak;
  return samples.map((sample) => Math.max(-1, Math.min(1, gain * sample)));
}

/** With a constant added, as cheap sound cards do. */
export function withOffset(samples: Float32Array, offset: number): Float32Array {
  return samples.map((sample) => Math.max(-1, Math.min(1, sample + offset)));
}

/**
 * With the hum of the mains, odd harmonics strongest, as a bad earth gives.
 * @param mainsHz 50 or 60
 * @param levelDb of the hum, dBFS (root mean square)
 */
export function withMainsHum(samples: Float32Array, mainsHz: 50 | 60, levelDb: number): Float32Array {
  const peaks = [1, 0.25, 0.5, 0.12, 0.3, 0.08, 0.15];
  const power = peaks.reduce((sum, peak) => sum + (peak * peak) / 2, 0);
  const gain = 10 ** (levelDb / 20) / Math.sqrt(power);
  return samples.map((sample, at) => {
    let hum = 0;
    for (const [before, peak] of peaks.entries())
      hum += peak * Math.sin((2 * Math.PI * mainsHz * (before + 1) * at) / listeningRate);
    return Math.max(-1, Math.min(1, sample + gain * hum));
  });
}

/** Turned up or down, then coded in 16 bits: what was too quiet has lost its finer steps. */
export function atLevel(samples: Float32Array, gainDb: number): Float32Array {
  const gain = 10 ** (gainDb / 20);
  return samples.map((sample) =>
    Math.max(-1, Math.min(0x7fff / 0x8000, Math.round(gain * sample * 0x8000) / 0x8000)),
  );
}

/** With silence where a wireless link lost sound; how far apart the gaps lie is exponentially distributed. */
export function withDropOuts(
  samples: Float32Array,
  { everyS, shortestS, longestS, seed }: DropOuts,
): Float32Array {
  const chance = createChance(seed);
  const out = samples.slice();
  const later = (): number => -everyS * Math.log(1 - chance.even());
  for (let s = later(); s * listeningRate < out.length;) {
    const lastsS = chance.between(shortestS, longestS);
    const from = Math.round(s * listeningRate);
    out.fill(0, from, from + Math.round(lastsS * listeningRate));
    s += lastsS + later();
  }
  return out;
}

/** Gone after so many seconds: the recording ends there. */
export function vanishing(samples: Float32Array, afterS: number): Float32Array {
  return samples.slice(0, Math.round(afterS * listeningRate));
}

const atRate =
  (rate: number) =>
  (samples: Float32Array): Recording => ({
    rate,
    samples: resample(samples, listeningRate, rate),
  });

const faulty =
  (fault: (samples: Float32Array, seed: number) => Float32Array) =>
  (samples: Float32Array, seed: number): Recording => ({
    rate: listeningRate,
    samples: fault(samples, seed),
  });

/** The microphones that the benches hear through besides a good one. */
export const devices: readonly Device[] = [
  { name: "clips by 12 dB", record: faulty((samples) => clipped(samples, 12)) },
  { name: "offset of a tenth", record: faulty((samples) => withOffset(samples, 0.1)) },
  { name: "hum of 50 Hz", record: faulty((samples) => withMainsHum(samples, 50, -36)) },
  { name: "hum of 60 Hz", record: faulty((samples) => withMainsHum(samples, 60, -36)) },
  { name: "30 dB too quiet", record: faulty((samples) => atLevel(samples, -30)) },
  { name: "shouted at", record: faulty((samples) => atLevel(clipped(samples, 3), 0)) },
  {
    name: "wireless with gaps",
    record: faulty((samples, seed) =>
      withDropOuts(samples, { everyS: 1, shortestS: 0.02, longestS: 0.06, seed }),
    ),
  },
  { name: "8 kHz", record: atRate(8000) },
  { name: "44.1 kHz", record: atRate(44_100) },
  { name: "48 kHz", record: atRate(48_000) },
  { name: "96 kHz", record: atRate(96_000) },
];
