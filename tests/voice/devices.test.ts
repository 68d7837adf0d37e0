import { describe, expect, it } from "vitest";
import { loudness } from "../../core/speech/loudness.ts";
import { resample } from "../../core/speech/resample.ts";
import { atLevel, clipped, devices, vanishing, withDropOuts, withMainsHum, withOffset } from "./devices.ts";
import { spectrumOf } from "./fft.ts";
import { makeNoise } from "./noises.ts";

const tone = new Float32Array(16_384).map((_, at) => 0.2 * Math.sin((2 * Math.PI * 1000 * at) / 16_000));
const hiss = makeNoise("running tap", 4, 11);
const device = (name: string) => {
  const found = devices.find((each) => each.name === name);
  if (found === undefined) throw new Error(`There is no device ${name}.`);
  return found;
};

/** Amplitude at a whole frequency bin, by a transform of one second at 16,384 samples. */
const amplitude = (samples: Float32Array, bin: number): number => {
  const { re, im } = spectrumOf(samples.subarray(0, 16_384), 16_384);
  return (2 * Math.hypot(re[bin] ?? 0, im[bin] ?? 0)) / 16_384;
};

describe("microphones with faults", () => {
  it("[V43] every device gives the same for the same seed, at its rate, and leaves what was said alone", () => {
    const before = hiss.slice();
    for (const { name, record } of devices) {
      const { rate, samples } = record(hiss, 3);
      const again = record(hiss, 3);
      expect(again.rate, name).toBe(rate);
      expect(
        again.samples.every((sample, at) => sample === samples[at]),
        name,
      ).toBe(true);
      expect(Math.abs(samples.length / rate - hiss.length / 16_000), name).toBeLessThan(0.001);
      expect(samples.every(Number.isFinite), name).toBe(true);
    }
    expect(hiss.every((sample, at) => sample === before[at])).toBe(true);
  });

  it("[V43] clipping cuts off what is over full scale, and nothing else", () => {
    const cut = clipped(tone, 6);
    // A sine twice as high as full scale is cut between 30 and 150 degrees: two thirds of the time.
    expect(cut.filter((sample) => Math.abs(sample) === 1).length / cut.length).toBeCloseTo(2 / 3, 1);
    expect(clipped(tone, -1).every((sample) => Math.abs(sample) < 1)).toBe(true);
    expect(clipped(new Float32Array(3), 12)).toEqual(new Float32Array(3));
  });

  it("[V43] an offset is the mean, a hum is at the mains and its harmonics at the level given", () => {
    const mean = withOffset(tone, 0.1).reduce((sum, sample) => sum + sample, 0) / tone.length;
    expect(mean).toBeCloseTo(0.1, 3);
    const hum = withMainsHum(new Float32Array(16_000), 50, -36);
    expect(loudness(hum)).toBeCloseTo(-36, 1);
    const padded = withMainsHum(new Float32Array(16_384), 50, -36);
    // At 16,384 samples 50 Hz is bin 51.2.
    expect(amplitude(padded, 51)).toBeGreaterThan(10 * amplitude(padded, 77));
  });

  it("[V43] 30 dB too quiet is 30 dB down, in the steps of 16 bits", () => {
    const quiet = atLevel(tone, -30);
    expect(loudness(quiet)).toBeCloseTo(loudness(tone) - 30, 1);
    expect(new Set(quiet.map((sample) => (sample * 0x8000) % 1))).toEqual(new Set([0, -0]));
    expect(new Set(quiet).size).toBeLessThan(420);
  });

  it("[V43] a wireless link loses 20 to 60 ms at a time", () => {
    const gaps: number[] = [];
    for (let seed = 1; seed <= 10; seed++) {
      const lost = withDropOuts(new Float32Array(64_000).fill(1), {
        everyS: 0.5,
        shortestS: 0.02,
        longestS: 0.06,
        seed,
      });
      let length = 0;
      for (const sample of lost) {
        if (sample === 0) length++;
        else if (length > 0) gaps.push(length / 16);
        if (sample !== 0) length = 0;
      }
    }
    expect(gaps.length).toBeGreaterThan(40);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(19.9);
    expect(gaps.filter((ms) => ms > 60.1).length).toBeLessThanOrEqual(gaps.length / 20);
    expect(vanishing(hiss, 1.5).length).toBe(24_000);
  });

  it("[V43] an 8 kHz device hears nothing above 4 kHz, and a tone keeps its pitch at every rate", () => {
    const narrow = device("8 kHz").record(hiss, 1).samples;
    const back = resample(narrow, 8000, 16_000);
    const above = (samples: Float32Array): number => {
      const { re, im } = spectrumOf(samples.subarray(0, 32_768), 32_768);
      let sum = 0;
      for (let k = 9000; k < 16_384; k++) sum += (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2;
      return sum;
    };
    expect(above(back)).toBeLessThan(above(hiss) * 1e-4);
    for (const name of ["8 kHz", "44.1 kHz", "48 kHz", "96 kHz"]) {
      const { rate, samples } = device(name).record(tone, 1);
      const crossings = samples.filter((sample, at) => sample >= 0 && (samples[at - 1] ?? 0) < 0).length;
      expect(Math.abs(crossings / (samples.length / rate) - 1000), name).toBeLessThan(3);
    }
  });
});
