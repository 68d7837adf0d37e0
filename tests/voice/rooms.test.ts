import { describe, expect, it } from "vitest";
import { listeningRate } from "../../core/speech/samples.ts";
import { convolve } from "./fft.ts";
import { makeNoise } from "./noises.ts";
import { inRoom, roomResponse } from "./rooms.ts";

const times = [0.25, 0.35, 0.5] as const;
const distances = [1, 2, 3] as const;

/** What is left of a response's energy from each sample on, in dB: backward integration. */
function energyLeft(response: Float32Array): Float64Array {
  const left = new Float64Array(response.length);
  let sum = 0;
  for (let at = response.length - 1; at >= 0; at--) {
    sum += (response[at] ?? 0) ** 2;
    left[at] = sum;
  }
  return left.map((energy) => 10 * Math.log10(energy / sum));
}

/**
 * The reverberation time from the line through the fall from -5 to -25 dB, times three.
 * Source: M. R. Schroeder, New method of measuring reverberation time, J. Acoust. Soc. Am. 37:409 (1965); the range
 * is T20 of ISO 3382. The range starts 5 dB below the level once the direct sound is over, which has no part in it.
 */
function measuredRt60(response: Float32Array): number {
  const whole = energyLeft(response.subarray(Math.round(0.002 * listeningRate)));
  const points = [...whole].flatMap((db, at) =>
    db <= -5 && db >= -25 ? [{ s: at / listeningRate, db }] : [],
  );
  const mean = (of: (point: { s: number; db: number }) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const s = mean((point) => point.s);
  const db = mean((point) => point.db);
  const slope = mean((point) => (point.s - s) * (point.db - db)) / mean((point) => (point.s - s) ** 2);
  return -60 / slope;
}

describe("rooms", () => {
  it("[V43] the same seed is the same room, another another", () => {
    const room = { rt60S: 0.3, metres: 2, seed: 4 };
    expect(roomResponse(room)).toEqual(roomResponse(room));
    expect(roomResponse({ ...room, seed: 5 })).not.toEqual(roomResponse(room));
  });

  it("[V43] sound falls by 60 dB in the time asked for, measured back within 15 %", () => {
    for (const rt60S of times)
      for (const metres of distances)
        for (let seed = 1; seed <= 8; seed++) {
          const measured = measuredRt60(roomResponse({ rt60S, metres, seed }));
          expect(Math.abs(measured / rt60S - 1), `${rt60S} s, ${metres} m, seed ${seed}`).toBeLessThan(0.15);
        }
  });

  it("[V43] twice as far is 6 dB less direct sound against the rest", () => {
    const directDb = (metres: number): number => {
      const response = roomResponse({ rt60S: 0.4, metres, seed: 9 });
      const rest = response.subarray(1).reduce((sum, sample) => sum + sample * sample, 0);
      return 10 * Math.log10((response[0] ?? 0) ** 2 / rest);
    };
    expect(directDb(1) - directDb(2)).toBeCloseTo(6.02, 1);
    // A kitchen of about 30 m3 with 0.4 s: critical distance 0.057 sqrt(2 * 30 / 0.4) = 0.70 m, so -3.1 dB at 1 m.
    expect(directDb(1)).toBeGreaterThan(-5);
    expect(directDb(1)).toBeLessThan(-1.5);
  });

  it("[V43] a response keeps the level of what is said", () => {
    for (const metres of distances) {
      const response = roomResponse({ rt60S: 0.35, metres, seed: 2 });
      expect(response.reduce((sum, sample) => sum + sample * sample, 0)).toBeCloseTo(1, 4);
    }
  });

  it("[V43] speech in a room is convolved with it, tail included", () => {
    const speech = makeNoise("running tap", 1, 3).subarray(0, 3001);
    const response = roomResponse({ rt60S: 0.25, metres: 1, seed: 6 });
    const heard = inRoom(speech, response);
    expect(heard.length).toBe(speech.length + response.length - 1);
    for (const at of [0, 1, 777, 2999, 3000, 4567, heard.length - 1]) {
      let sum = 0;
      for (const [k, sample] of speech.entries()) sum += sample * (response[at - k] ?? 0);
      expect(heard[at]).toBeCloseTo(sum, 5);
    }
  });

  it("[V43] many blocks are one sound", () => {
    const clicks = new Float32Array(10_000);
    clicks[0] = clicks[1500] = clicks[9999] = 1;
    const out = convolve(clicks, Float32Array.of(1, 0.5, 0.25));
    const expected = new Float32Array(10_002);
    for (const at of [0, 1500, 9999]) expected.set([1, 0.5, 0.25], at);
    expect(out.every((sample, at) => Math.abs(sample - (expected[at] ?? 0)) < 1e-6)).toBe(true);
  });

  it("[V43] a room needs a time and a distance", () => {
    expect(() => roomResponse({ rt60S: 0, metres: 1, seed: 1 })).toThrow("above 0");
    expect(() => roomResponse({ rt60S: 0.3, metres: 0, seed: 1 })).toThrow("above 0");
  });
});
