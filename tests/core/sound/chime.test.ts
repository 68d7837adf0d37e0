import { describe, expect, it } from "vitest";
import {
  chimeCount,
  chimeFor,
  chimeLengthMs,
  earcon,
  ringPeriodMs,
  type ChimeSpec,
} from "../../../core/sound/chime.ts";
import { renderChime } from "../../../core/sound/render-chime.ts";

const indices = Array.from({ length: chimeCount }, (_unused, i) => i);
const pitches = (spec: ChimeSpec): string => spec.strikes.map((strike) => strike.hz.toFixed(1)).join(" ");
const rhythm = (spec: ChimeSpec): string => spec.strikes.map((strike) => strike.atMs).join(" ");
const semitones = (a: number, b: number): number => Math.abs(12 * Math.log2(a / b));

function loudest(samples: Float32Array): number {
  return samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
}

/** Power at one pitch (Goertzel's recurrence), for telling which notes a sound holds. */
function power(samples: Float32Array, hz: number, sampleRate: number): number {
  const turn = 2 * Math.cos((2 * Math.PI * hz) / sampleRate);
  let [one, two] = [0, 0];
  for (const sample of samples) [one, two] = [sample + turn * one - two, one];
  return (one * one + two * two - turn * one * two) / samples.length ** 2;
}

describe("a timer's chime", () => {
  it("[S9] at least twelve timers have each a pitch and a rhythm that no other has both of", () => {
    expect(chimeCount).toBeGreaterThanOrEqual(12);
    expect(new Set(indices.map((i) => `${pitches(chimeFor(i, 1))} | ${rhythm(chimeFor(i, 1))}`)).size).toBe(
      chimeCount,
    );
    expect(new Set(indices.slice(0, 12).map((i) => pitches(chimeFor(i, 1)))).size).toBe(12);
  });

  it("[S9] the first twelve begin on twelve different notes, a semitone or more apart", () => {
    const first = indices
      .slice(0, 12)
      .map((i) => chimeFor(i, 1).strikes[0]?.hz ?? 0)
      .sort((a, b) => a - b);
    first.slice(1).forEach((hz, i) => {
      expect(semitones(hz, first[i] ?? 0)).toBeGreaterThan(0.99);
    });
  });

  it("[S9] neighbours differ in rhythm and by five semitones or more, for timers are started one after another", () => {
    for (const i of indices.slice(1)) {
      const [one, other] = [chimeFor(i - 1, 1), chimeFor(i, 1)];
      expect(rhythm(one)).not.toBe(rhythm(other));
      expect(semitones(one.strikes[0]?.hz ?? 1, other.strikes[0]?.hz ?? 1)).toBeGreaterThan(4.9);
    }
  });

  it("[S10] the same timer always sounds the same, and any index at all has a chime", () => {
    expect(chimeFor(5, 2)).toEqual(chimeFor(5, 2));
    expect(chimeFor(chimeCount + 3, 1)).toEqual(chimeFor(3, 1));
    for (const odd of [-1, 1e9, 2.7, Number.NaN, Number.POSITIVE_INFINITY])
      expect(chimeFor(odd, 1).strikes.length).toBeGreaterThan(0);
  });

  it("[S11] each of three rounds is 3 to 5 dB louder than the one before, and later ones stay", () => {
    const peaks = [1, 2, 3, 4, 99].map((round) => chimeFor(0, round).peak);
    const [a = 0, b = 0, c = 0] = peaks;
    for (const step of [b / a, c / b])
      expect(20 * Math.log10(step)).toSatisfy((dB: number) => dB > 3 && dB < 5);
    expect(peaks.slice(2)).toEqual([0.8, 0.8, 0.8]);
    expect(chimeFor(0, 0).peak).toBe(a);
  });

  it("[S12] every chime fits between two repeats, and repeats of different timers drift apart", () => {
    for (const i of indices) expect(chimeLengthMs(chimeFor(i, 1))).toBeLessThan(ringPeriodMs(i) - 500);
    for (const i of indices.slice(1)) expect(ringPeriodMs(i)).not.toBe(ringPeriodMs(i - 1));
  });
});

describe("chimes as samples", () => {
  const rates = [8_000, 44_100, 48_000];
  const specs = [
    ...indices.map((i) => chimeFor(i, 3)),
    earcon("heard"),
    earcon("notUnderstood"),
    earcon("listening"),
  ];

  it.each(rates)("[S13] at %i Hz each begins and ends at 0, reaches its peak and never 0.8 more", (rate) => {
    for (const spec of specs) {
      const samples = renderChime(spec, rate);
      expect(
        [samples[0], samples[samples.length - 1]].map(Math.abs as (n: number | undefined) => number),
      ).toEqual([0, 0]);
      expect(loudest(samples)).toBeCloseTo(spec.peak, 5);
      expect(loudest(samples)).toBeLessThanOrEqual(0.8 + 1e-6);
      expect(samples.length / rate).toBeCloseTo(chimeLengthMs(spec) / 1000, 2);
    }
  });

  it("[S13] no click: at 48 kHz no two samples in a row lie further apart than the notes themselves swing", () => {
    for (const spec of specs) {
      const samples = renderChime(spec, 48_000);
      const jump = samples.reduce(
        (most, sample, i) => Math.max(most, Math.abs(sample - (samples[i - 1] ?? 0))),
        0,
      );
      // The steepest of a sine is 2 pi f / rate of its height: the fundamental, at most 1,400 Hz, and its overtones.
      expect(jump / spec.peak).toBeLessThan((2 * Math.PI * 1_400 * 2.5) / 48_000);
    }
  });

  it("[S13] the fundamental written in the score is the strongest note in the sound", () => {
    for (const i of indices) {
      const spec = chimeFor(i, 1);
      const hz = spec.strikes[0]?.hz ?? 0;
      const firstStroke = renderChime({ ...spec, strikes: spec.strikes.slice(0, 1) }, 48_000);
      expect(power(firstStroke, hz, 48_000)).toBeGreaterThan(10 * power(firstStroke, hz * 1.5, 48_000));
      expect(power(firstStroke, hz, 48_000)).toBeGreaterThan(power(firstStroke, hz * 2, 48_000));
    }
  });

  it("[S13] a bell fades: the second half of a stroke is quieter than a quarter of the first", () => {
    const samples = renderChime({ ...chimeFor(0, 1), strikes: chimeFor(0, 1).strikes.slice(0, 1) }, 48_000);
    const half = samples.length / 2;
    expect(loudest(samples.subarray(half))).toBeLessThan(loudest(samples.subarray(0, half)) / 4);
  });

  it("[S14] the three short signals differ, last under 0.4 s and stay quieter than any ring", () => {
    const signals = [earcon("heard"), earcon("notUnderstood"), earcon("listening")];
    expect(new Set(signals.map(pitches)).size).toBe(3);
    for (const spec of signals) {
      expect(chimeLengthMs(spec)).toBeLessThan(400);
      expect(spec.peak).toBeLessThan(chimeFor(0, 1).peak);
    }
    const [heard, not] = [earcon("heard"), earcon("notUnderstood")].map((spec) =>
      spec.strikes.map((strike) => strike.hz),
    );
    expect([(heard?.[1] ?? 0) > (heard?.[0] ?? 0), (not?.[1] ?? 0) < (not?.[0] ?? 0)]).toEqual([true, true]);
  });

  it("[S14] a chime without strokes is silence", () => {
    expect(loudest(renderChime({ strikes: [], peak: 0.5 }, 48_000))).toBe(0);
  });
});
