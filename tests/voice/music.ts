import { listeningRate } from "../../core/speech/samples.ts";
import { createFilter } from "./filters.ts";
import type { Chance } from "./seeded.ts";

const rate = listeningRate;

/** Steps of the major scale, in semitones, and chords on it by their root's step: each goes round in four bars. */
const scale = [0, 2, 4, 5, 7, 9, 11];
const rounds = [
  [0, 5, 3, 4],
  [0, 3, 0, 4],
  [5, 3, 0, 4],
  [0, 2, 3, 4],
  [1, 4, 0, 5],
] as const;

/** Semitones over the key for a step of the scale that may lie octaves above or below. */
function semitones(step: number): number {
  const within = ((step % 7) + 7) % 7;
  return (scale[within] ?? 0) + 12 * Math.floor(step / 7);
}

type Tone = {
  readonly fromS: number;
  readonly lastsS: number;
  readonly hz: number;
  readonly peak: number;
  readonly harmonics: number;
  readonly vibrato: number;
};

/**
 * Music of nobody: a key, a tempo and chords by chance, three voices that hold them, a bass, a melody with vibrato
 * that walks and leaps, and a drum, a snare and a cymbal to the beat; every voice with harmonics up to the eighth.
 * It comes from a small loudspeaker, which gives little below 150 Hz.
 */
export function makeMusic(out: Float32Array, chance: Chance): Float32Array {
  const beatS = 60 / chance.between(84, 132);
  const key = 110 * 2 ** (chance.whole(12) / 12);
  const chords = chance.pick(rounds);
  const pitch = (step: number, octave: number): number => key * 2 ** (octave + semitones(step) / 12);
  const beats = Math.ceil(out.length / rate / beatS);
  let melody = 7;
  for (let beat = 0; beat < beats; beat++) {
    const fromS = beat * beatS;
    const root = chords[Math.floor(beat / 4) % 4] ?? 0;
    const held = { fromS, harmonics: 6, vibrato: 0 };
    if (beat % 4 === 0)
      for (const third of [0, 2, 4])
        addTone(out, { ...held, lastsS: 4 * beatS, hz: pitch(root + third, 1), peak: 0.07 });
    addTone(out, { ...held, lastsS: beatS, hz: pitch(root + (beat % 2) * 4, -1), peak: 0.16 });
    for (let part = 0; part < 2; part++) {
      if (chance.even() < 0.25) continue;
      melody += chance.pick([-2, -1, -1, 0, 1, 1, 2, 4, -3]);
      melody = Math.max(4, Math.min(16, melody));
      const sung = { fromS: fromS + (part * beatS) / 2, lastsS: beatS * chance.pick([0.5, 0.5, 1]) };
      addTone(out, { ...sung, hz: pitch(melody, 1), peak: 0.15, harmonics: 8, vibrato: 0.006 });
    }
    addDrums(out, fromS, beat, beatS, chance);
  }
  const speaker = createFilter("high-pass", 150 / rate);
  return out.map((sample) => speaker(sample));
}

function addTone(out: Float32Array, { fromS, lastsS, hz, peak, harmonics, vibrato }: Tone): void {
  const start = Math.round(fromS * rate);
  const end = Math.min(out.length, start + Math.round(lastsS * rate));
  const count = Math.min(harmonics, Math.floor(7200 / hz));
  for (let at = start; at < end; at++) {
    const s = (at - start) / rate;
    const shape = Math.min(1, s / 0.015, (lastsS - s) / 0.03) * Math.exp(-1.2 * s);
    const phase = 2 * Math.PI * hz * s + ((vibrato * hz) / 5.5) * Math.sin(2 * Math.PI * 5.5 * s);
    let sum = 0;
    for (let harmonic = 1; harmonic <= count; harmonic++) sum += Math.sin(harmonic * phase) / harmonic ** 1.2;
    out[at] = (out[at] ?? 0) + peak * Math.max(0, shape) * sum;
  }
}

/** A drum that falls in pitch on one and three, a snare on two and four, a cymbal on every half beat. */
function addDrums(out: Float32Array, fromS: number, beat: number, beatS: number, chance: Chance): void {
  const start = Math.round(fromS * rate);
  const bright = createFilter("high-pass", 5000 / rate);
  const body = createFilter("band-pass", 1800 / rate, 0.7);
  const half = Math.round((beatS * rate) / 2);
  for (let at = 0; at < 2 * half && start + at < out.length; at++) {
    const s = at / rate;
    const white = chance.normal();
    let sum = 0.08 * bright(white) * Math.exp(-(at % half) / (0.03 * rate));
    if (beat % 2 === 1) sum += 0.35 * body(white) * Math.exp(-s / 0.06);
    else sum += 0.5 * Math.sin(2 * Math.PI * (50 * s - 4 * Math.exp(-s / 0.03))) * Math.exp(-s / 0.12);
    out[start + at] = (out[start + at] ?? 0) + sum;
  }
}
