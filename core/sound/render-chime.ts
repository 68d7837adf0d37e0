import { chimeLengthMs, type ChimeSpec, type Strike } from "./chime.ts";

/**
 * Overtones of a small bell with the strike note strongest; the higher, the sooner it is gone.
 * Ratios near those of a tuned bell (prime, octave, twelfth, double octave); from memory, chosen by ear.
 */
const partials = [
  { ratio: 1, gain: 1, life: 1 },
  { ratio: 2, gain: 0.42, life: 0.7 },
  { ratio: 3.01, gain: 0.2, life: 0.45 },
  { ratio: 4.17, gain: 0.1, life: 0.3 },
] as const;

const attackSeconds = 0.006;
const releaseSeconds = 0.03;
/** Natural-log decay over a partial's life: e^-5 is 43 dB down. */
const decayNepers = 5;

/** Half a cosine from 0 to 1: a rise or fall without a corner, so without a click. */
function ease(share: number): number {
  return share >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, share));
}

function addStrike(out: Float32Array, strike: Strike, sampleRate: number): void {
  const length = Math.round((strike.ringMs / 1000) * sampleRate);
  const start = Math.round((strike.atMs / 1000) * sampleRate);
  const audible = partials.filter((partial) => strike.hz * partial.ratio < sampleRate * 0.45);
  for (let i = 0; i < length; i += 1) {
    const t = i / sampleRate;
    const left = (length - 1 - i) / sampleRate;
    const edge = ease(t / attackSeconds) * ease(left / releaseSeconds);
    let sum = 0;
    for (const { ratio, gain, life } of audible) {
      const fade = Math.exp((-decayNepers * t * 1000) / (strike.ringMs * life));
      sum += gain * fade * Math.sin(2 * Math.PI * strike.hz * ratio * t);
    }
    out[start + i] = (out[start + i] ?? 0) + strike.gain * edge * sum;
  }
}

function loudest(samples: Float32Array): number {
  return samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
}

/**
 * Samples of a chime.
 * @param sampleRate in Hz; overtones that would alias at a low rate are left out
 * @returns mono samples, first and last exactly 0, largest absolute value `spec.peak`
 */
export function renderChime(spec: ChimeSpec, sampleRate: number): Float32Array {
  const strikes = spec.strikes;
  const ends = strikes.map(
    ({ atMs, ringMs }) => Math.round((atMs / 1000) * sampleRate) + Math.round((ringMs / 1000) * sampleRate),
  );
  const out = new Float32Array(Math.max(2, Math.ceil((chimeLengthMs(spec) / 1000) * sampleRate), ...ends));
  for (const strike of strikes) addStrike(out, strike, sampleRate);
  const peak = loudest(out);
  const scale = peak === 0 ? 0 : spec.peak / peak;
  return out.map((sample) => sample * scale);
}
