import { loudness } from "../../core/speech/loudness.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { activeLevel } from "./active-level.ts";
import { createFilter, inTurn } from "./filters.ts";
import { makeMusic } from "./music.ts";
import { createChance, type Chance } from "./seeded.ts";

/** What a kitchen sounds like besides the cook. */
export const noiseKinds = ["extractor fan", "running tap", "frying", "clatter", "talkers", "music"] as const;

/** One of them. */
export type NoiseKind = (typeof noiseKinds)[number];

/** Seeds that limits may be set with, and seeds that are for checking alone. */
export const seeds = { tuning: [11, 12, 13, 14], check: [71, 72, 73, 74] } as const;

const rate = listeningRate;

/** All noises are as loud as this (root mean square, dBFS), or so loud that their peak is full scale. */
const levelDb = -26;

/**
 * A noise that follows from its seed, bit for bit; another seed is another fan, tap, pan, kitchen, party or tune.
 * @param seconds how long; at least 1
 * @param recordings what the talkers say, mono at 16 kHz; the other kinds need none
 * @returns mono, 16 kHz, within [-1, 1], -26 dBFS unless its peaks forbid it
 */
export function makeNoise(
  kind: NoiseKind,
  seconds: number,
  seed: number,
  recordings: readonly Float32Array[] = [],
): Float32Array {
  const chance = createChance(seed);
  const out = new Float32Array(Math.round(seconds * rate));
  switch (kind) {
    case "extractor fan":
      return levelled(fan(out, chance));
    case "running tap":
      return levelled(tap(out, chance));
    case "frying":
      return levelled(frying(out, chance));
    case "clatter":
      return levelled(clatter(out, chance));
    case "talkers":
      return levelled(talkers(out, chance, recordings));
    case "music":
      return levelled(makeMusic(out, chance));
  }
}

function levelled(sound: Float32Array): Float32Array {
  const peak = sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const gain = Math.min(10 ** ((levelDb - loudness(sound)) / 20), 1 / peak);
  return sound.map((sample) => sample * gain);
}

/** A value that wanders about 0 with deviation 1, no faster than `hz`. */
function createWander(chance: Chance, hz: number): () => number {
  const every = Math.max(1, Math.round(rate / (8 * hz)));
  const keep = Math.exp(-2 * Math.PI * hz * (every / rate));
  let target = chance.normal();
  let value = target;
  let at = 0;
  return () => {
    if (at++ % every === 0) target = keep * target + Math.sqrt(1 - keep * keep) * chance.normal();
    value += (target - value) / every;
    return value;
  };
}

/**
 * Air pushed through a duct (broadband, falling from 150 Hz on) under the tones of a fan: 5 to 8 blades at 20 to 28
 * turns a second pass a strut so often, with harmonics, and the motor hums at twice the mains' frequency.
 */
function fan(out: Float32Array, chance: Chance): Float32Array {
  const passing = (5 + chance.whole(4)) * chance.between(20, 28);
  const hum = chance.pick([100, 120]);
  const tones = [1, 2, 3, 4, 5, 6].map((harmonic) => ({
    hz: passing * harmonic,
    peak: (chance.between(0.4, 0.8) * 0.55) / harmonic ** 1.3,
  }));
  tones.push({ hz: hum, peak: chance.between(0.15, 0.3) });
  const rumble = inTurn(createFilter("low-pass", 220 / rate), createFilter("high-pass", 45 / rate));
  const rush = createFilter("low-pass", 1100 / rate, 0.4);
  const gust = createWander(chance, 1.5);
  let turned = 0;
  for (let at = 0; at < out.length; at++) {
    const wind = 1 + 0.06 * gust();
    turned += (1 + 0.002 * (wind - 1)) / rate;
    const white = chance.normal();
    let sum = wind * (2.2 * rumble(white) + 2.2 * rush(white) + 0.1 * white);
    for (const { hz, peak } of tones) sum += peak * Math.sin(2 * Math.PI * hz * turned);
    out[at] = sum;
  }
  return out;
}

/**
 * Water that breaks on steel: bright hiss that flutters, with bubbles in it. A bubble of radius r metres rings at
 * 3.26 / r Hz (Minnaert, On musical air-bubbles and the sounds of running water, Phil. Mag. 16:235, 1933), dies away
 * within some milliseconds, and rises in pitch as it nears the surface; figures from memory.
 */
function tap(out: Float32Array, chance: Chance): Float32Array {
  const bright = inTurn(
    createFilter("high-pass", chance.between(1100, 1700) / rate),
    createFilter("low-pass", chance.between(5500, 7000) / rate, 0.6),
  );
  const flutter = createWander(chance, 9);
  const stream = createWander(chance, 0.7);
  for (let at = 0; at < out.length; at++)
    out[at] = bright(chance.normal()) * 0.3 * Math.max(0.2, 1 + 0.25 * flutter() + 0.2 * stream());
  const everyS = 1 / chance.between(35, 70);
  for (let s = 0; s < out.length / rate; s -= everyS * Math.log(1 - chance.even())) {
    const metres = 0.0011 * Math.exp(0.55 * chance.normal());
    const hz = Math.min(6500, 3.26 / metres);
    ring(out, s, { hz, rise: 3 * chance.even(), decayS: 9 / hz + 0.002, peak: chance.between(0.1, 0.45) });
  }
  return out;
}

/** Drops of water that burst in hot fat: dense crackles, now more and now fewer, over a hiss above 3 kHz. */
function frying(out: Float32Array, chance: Chance): Float32Array {
  const high = createFilter("high-pass", 3000 / rate);
  const simmer = createWander(chance, 3);
  for (let at = 0; at < out.length; at++)
    out[at] = high(chance.normal()) * 0.12 * Math.max(0.3, 1 + 0.3 * simmer());
  const density = chance.between(110, 220);
  const fury = createWander(chance, 1.2);
  let busy = 1;
  for (let at = 0; at < out.length; at++) {
    if (at % 160 === 0) busy = Math.exp(0.5 * fury());
    else fury();
    if (chance.even() >= (density * busy) / rate) continue;
    const peak = 0.25 * Math.exp(Math.min(1.4, 0.7 * chance.normal()));
    const decayS = chance.between(0.0004, 0.003);
    ring(out, at / rate, { hz: chance.between(1800, 7200), rise: 0, decayS, peak });
    for (let burst = at; burst < Math.min(out.length, at + 40); burst++)
      out[burst] = (out[burst] ?? 0) + peak * 0.6 * chance.normal() * Math.exp(-(burst - at) / 12);
  }
  return out;
}

/**
 * Pots, lids and cutlery put down and struck together: blows in clusters, never more than 0.9 s apart so that a
 * sentence always has some, each a click and 9 to 14 tones that are no harmonics, the high ones gone first.
 */
function clatter(out: Float32Array, chance: Chance): Float32Array {
  for (let at = 0; at < out.length; at++) out[at] = 0.0008 * chance.normal();
  const things = Array.from({ length: 7 }, () => thing(chance));
  for (let s = chance.between(0.02, 0.3); s < out.length / rate;) {
    const struck = chance.pick(things);
    let blowS = s;
    for (let blows = 1 + chance.whole(4); blows > 0; blows--) {
      const force = chance.between(0.5, 1.6);
      for (const { hz, decayS, peak } of struck) {
        const part = peak * force * chance.between(0.3, 1);
        ring(out, blowS, { hz, rise: 0, decayS, peak: part });
      }
      const start = Math.round(blowS * rate);
      for (let at = start; at < Math.min(out.length, start + 64); at++)
        out[at] = (out[at] ?? 0) + force * 0.5 * chance.normal() * Math.exp(-(at - start) / 14);
      blowS += chance.between(0.05, 0.22);
    }
    s = blowS + chance.between(0.05, 0.68);
  }
  return out;
}

type Ring = { readonly hz: number; readonly rise: number; readonly decayS: number; readonly peak: number };

/** The tones of one thing: a knife or spoon rings high and briefly, a pot or its lid lower and longer. */
function thing(chance: Chance): readonly Ring[] {
  const isPot = chance.even() < 0.5;
  const lowest = isPot ? chance.between(280, 900) : chance.between(1300, 2600);
  const longestS = isPot ? chance.between(0.15, 0.5) : chance.between(0.06, 0.25);
  const modes = Array.from({ length: 9 + chance.whole(6) }, (_, mode) => {
    const hz = lowest * (1 + mode * chance.between(0.45, 0.95));
    return { hz, rise: 0, decayS: longestS * (lowest / hz) ** 0.6, peak: 0.3 / (1 + 0.25 * mode) };
  }).filter(({ hz }) => hz < 7600);
  const energy = modes.reduce((sum, { peak, decayS }) => sum + peak * peak * decayS, 0);
  // A spoon's blow is as loud as a pot's, however much sooner it has died away.
  return modes.map((mode) => ({ ...mode, peak: (0.1 * mode.peak) / Math.sqrt(energy) }));
}

/** Adds a tone that dies away; its pitch rises by the share `rise` a second of its decay times ten. */
function ring(out: Float32Array, fromS: number, { hz, rise, decayS, peak }: Ring): void {
  const start = Math.round(fromS * rate);
  const end = Math.min(out.length, start + Math.ceil(7 * decayS * rate));
  for (let at = start; at < end; at++) {
    const s = (at - start) / rate;
    const value = peak * Math.exp(-s / decayS) * Math.sin(2 * Math.PI * hz * s * (1 + rise * s));
    out[at] = (out[at] ?? 0) + value;
  }
}

/** Four people who talk at once, each going through the recordings in an order of his own, from somewhere within. */
function talkers(out: Float32Array, chance: Chance, recordings: readonly Float32Array[]): Float32Array {
  const spoken = recordings
    .map((samples) => ({ samples, level: activeLevel(samples) }))
    .filter(({ level }) => level > -Infinity);
  if (spoken.length === 0) throw new Error("Talkers need recordings of speech: give at least one.");
  for (let talker = 0; talker < 4; talker++) {
    const distanceDb = chance.between(-4, 2);
    let recording = chance.pick(spoken);
    let from = chance.whole(recording.samples.length);
    for (let at = 0; at < out.length;) {
      const gain = 10 ** ((distanceDb + levelDb - recording.level) / 20);
      const piece = recording.samples.subarray(from);
      for (let k = 0; k < piece.length && at + k < out.length; k++)
        out[at + k] = (out[at + k] ?? 0) + gain * (piece[k] ?? 0);
      at += piece.length;
      recording = chance.pick(spoken);
      from = 0;
    }
  }
  return out;
}
