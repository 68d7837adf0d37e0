import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { loudness } from "../../core/speech/loudness.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import { activeLevel, spanOfSpeech } from "./active-level.ts";
import { spectrumOf } from "./fft.ts";
import { goingRound, mixAt, withSurroundings } from "./mix.ts";
import { makeNoise, noiseKinds, type NoiseKind, seeds } from "./noises.ts";
import { asWav, speechThatIsNoCommand } from "./speech-that-is-no-command.ts";

const recordings = speechThatIsNoCommand()
  .filter((path) => path.includes("librivox"))
  .map((path) => {
    const read = parseWav(path.endsWith(".raw") ? asWav(path) : readFileSync(path));
    if (!read.ok) throw new Error(read.error);
    return read.value.samples;
  });
const [speech = new Float32Array()] = recordings;
const allSeeds = [...seeds.tuning, ...seeds.check];

const made = new Map<string, Float32Array>();

/** Each made once. */
function noise(kind: NoiseKind, seconds = 6, seed = 11): Float32Array {
  const key = `${kind} ${seconds} ${seed}`;
  const sound = made.get(key) ?? makeNoise(kind, seconds, seed, recordings);
  made.set(key, sound);
  return sound;
}

/** Which share of a sound's energy lies between two frequencies. */
function share(sound: Float32Array, fromHz: number, toHz: number): number {
  const size = 65_536;
  const { re, im } = spectrumOf(sound.subarray(0, size), size);
  let within = 0;
  let all = 0;
  for (let k = 0; k < size / 2; k++) {
    const energy = (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2;
    const hz = (k * listeningRate) / size;
    all += energy;
    if (hz >= fromHz && hz < toHz) within += energy;
  }
  return within / all;
}

/** How far the loudest 10 ms stand above the median 10 ms, in dB. */
function burstiness(sound: Float32Array): number {
  const levels: number[] = [];
  for (let at = 0; at + 160 <= sound.length; at += 160) levels.push(loudness(sound.subarray(at, at + 160)));
  levels.sort((a, b) => a - b);
  return (levels.at(-1) ?? 0) - (levels[levels.length >> 1] ?? 0);
}

/** The noise that a mix holds, and by how much all of it was turned down. */
function apart(mixed: Float32Array, lead: number): { readonly gain: number; readonly rest: Float32Array } {
  // What a mix has in common with the speech is found by projection: noise and speech are strangers.
  let both = 0;
  let own = 0;
  for (const [at, sample] of speech.entries()) {
    both += sample * (mixed[lead + at] ?? 0);
    own += sample * sample;
  }
  const gain = Math.abs(both / own - 1) < 0.05 ? 1 : both / own;
  return { gain, rest: mixed.map((sample, at) => sample - gain * (speech[at - lead] ?? 0)) };
}

describe("noises", () => {
  it.each(noiseKinds)(
    "[V40] %s is the same from the same seed bit for bit, and another from another",
    (kind) => {
      expect(noise(kind, 2, 11)).toEqual(noise(kind, 2, 11));
      expect(noise(kind, 2, 12)).not.toEqual(noise(kind, 2, 11));
    },
  );

  it("[V40] no seed is both for tuning and for checking", () => {
    expect(seeds.tuning.filter((seed) => (seeds.check as readonly number[]).includes(seed))).toEqual([]);
  });

  it.each(noiseKinds)("[V40] %s is as long as asked, without clipping, at a level of its own", (kind) => {
    for (const seed of allSeeds) {
      const sound = noise(kind, 6, seed);
      expect(sound.length).toBe(96_000);
      expect(sound.every((sample) => Math.abs(sample) <= 1)).toBe(true);
      expect(loudness(sound)).toBeGreaterThan(-34);
      expect(loudness(sound)).toBeLessThan(-25.9);
    }
  });

  it("[V40] talkers without recordings are refused", () => {
    expect(() => makeNoise("talkers", 1, 1)).toThrow("give at least one");
  });

  it("[V41] every noise sounds as its name says", () => {
    for (const seed of allSeeds) {
      expect(share(noise("extractor fan", 6, seed), 0, 500)).toBeGreaterThan(0.7);
      expect(share(noise("running tap", 6, seed), 1000, 8000)).toBeGreaterThan(0.9);
      expect(share(noise("frying", 6, seed), 2500, 8000)).toBeGreaterThan(0.7);
      expect(share(noise("clatter", 6, seed), 250, 8000)).toBeGreaterThan(0.95);
      // Speech and music have most below 2 kHz, and something in each octave from 250 Hz.
      for (const kind of ["talkers", "music"] as const) {
        expect(share(noise(kind, 6, seed), 0, 2000)).toBeGreaterThan(0.75);
        expect(share(noise(kind, 6, seed), 250, 2000)).toBeGreaterThan(0.3);
      }
    }
  }, 60_000);

  it("[V41] a fan is steady, a tap flutters, fat crackles and pots crash", () => {
    for (const seed of allSeeds) {
      const [fan, tap, frying, clatter] = (
        ["extractor fan", "running tap", "frying", "clatter"] as const
      ).map((kind) => burstiness(noise(kind, 6, seed)));
      expect(fan).toBeLessThan(7);
      expect(tap).toBeLessThan(10);
      expect(frying).toBeGreaterThan(tap ?? 0);
      expect(clatter).toBeGreaterThan(12);
    }
  });

  it("[V41] no second of clatter is without a blow", () => {
    for (const seed of allSeeds) {
      const sound = noise("clatter", 6, seed);
      for (let at = 0; at + 16_000 <= sound.length; at += 4000)
        expect(loudness(sound.subarray(at, at + 16_000))).toBeGreaterThan(loudness(sound) - 16);
    }
  });
});

describe("mixing", () => {
  // Source: ITU-T P.56: the level of a sound that is on half of the time is that of the sound.
  it("[V42] pauses do not count in the active level", () => {
    const on = makeNoise("extractor fan", 3, 5);
    const paused = new Float32Array(3 * on.length);
    paused.set(on, on.length);
    expect(Math.abs(activeLevel(paused) - activeLevel(on))).toBeLessThan(0.5);
    expect(loudness(paused)).toBeLessThan(loudness(on) - 4);
    expect(activeLevel(new Float32Array(16_000))).toBe(-Infinity);
  });

  it.each(noiseKinds)("[V42] %s lies at the ratio asked for, measured back within 0.5 dB", (kind) => {
    const [from, to] = spanOfSpeech(speech);
    for (const snrDb of [20, 10, 5, 0]) {
      const { gain, rest } = apart(mixAt(speech, noise(kind, 12), snrDb), 0);
      const measured = activeLevel(speech) + 20 * Math.log10(gain) - loudness(rest.subarray(from, to));
      expect(Math.abs(measured - snrDb)).toBeLessThan(0.5);
    }
  });

  it("[V42] noise goes on before and after the words, at one level", () => {
    const tap = noise("running tap", 4);
    const mixed = withSurroundings(speech, tap, { leadS: 1.5, tailS: 2, snrDb: 10 });
    expect(mixed.length).toBe(speech.length + 56_000);
    const { rest } = apart(mixed, 24_000);
    const levels = [rest.subarray(0, 24_000), rest.subarray(24_000, -32_000), rest.subarray(-32_000)];
    const [before = 0, under = 0, after = 0] = levels.map(loudness);
    expect(Math.abs(before - under)).toBeLessThan(1.5);
    expect(Math.abs(after - under)).toBeLessThan(1.5);
  });

  it("[V42] a mix clips only where that was asked for", () => {
    const shouted = speech.map((sample) => Math.max(-1, Math.min(1, 3 * sample)));
    const peakOf = (sound: Float32Array): number => sound.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    const clatter = noise("clatter", 8);
    const turnedDown = mixAt(shouted, clatter, 0);
    const clipped = mixAt(shouted, clatter, 0, "clip");
    expect(peakOf(turnedDown)).toBeLessThan(1);
    expect(clipped.filter((sample) => Math.abs(sample) === 1).length).toBeGreaterThan(10);
    expect(turnedDown.filter((sample) => Math.abs(sample) > 0.9985).length).toBe(1);
  });

  it("[V42] silence cannot be mixed at a ratio", () => {
    expect(() => mixAt(new Float32Array(16_000), noise("frying", 1), 10)).toThrow("Silence has no level");
    expect(() => mixAt(speech, new Float32Array(16_000), 10)).toThrow("Silence has no level");
  });

  it("[V42] a short noise goes round without a click", () => {
    const hum = new Float32Array(8000).map((_, at) => 0.3 * Math.sin((2 * Math.PI * 170 * at) / 16_000));
    const round = goingRound(hum, 40_000);
    const steps = round.map((sample, at) => Math.abs(sample - (round[at - 1] ?? 0)));
    // A sine of 170 Hz moves at most 2 pi 170 / 16000 of its peak a sample; two that overlap add up.
    expect(Math.max(...steps)).toBeLessThan(2 * 0.3 * 2 * Math.PI * (170 / 16_000));
  });
});
