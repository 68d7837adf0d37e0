import { describe, expect, it } from "vitest";
import { filled } from "../../../../core/speech/transcribe/filled.ts";
import { joinSamples } from "../../../../core/speech/samples.ts";

const tone = (seconds: number, amplitude: number): Float32Array =>
  Float32Array.from({ length: seconds * 16_000 }, (_, at) => amplitude * Math.sin(at * 0.3));

describe("seconds of speech", () => {
  it("[V53] pauses do not count, soft syllables do", () => {
    const utterance = joinSamples([tone(0.4, 0.0005), tone(1, 0.3), tone(0.8, 0.001), tone(0.6, 0.05)]);
    expect(filled(utterance).spokenS).toBeCloseTo(1.6, 1);
  });

  it("[V53] a noise that fills the pauses counts, and silence is no speech at all", () => {
    expect(filled(joinSamples([tone(1, 0.1), tone(1, 0.3)])).spokenS).toBeCloseTo(2, 1);
    expect(filled(new Float32Array(16_000)).spokenS).toBe(0);
    expect(filled(new Float32Array(100)).spokenS).toBe(0);
    expect(filled(new Float32Array(0)).spokenS).toBe(0);
  });

  it.each([
    [40, true, true],
    [32, true, false],
    [25, false, false],
  ])(
    "[V78] a voice %d dB above the room stands clear of it: %s; nothing sounds beside it: %s",
    (db, clear, quiet) => {
      const { isClear, isQuiet } = filled(joinSamples([tone(0.5, 0.5 * 10 ** (-db / 20)), tone(1, 0.5)]));
      expect([isClear, isQuiet]).toEqual([clear, quiet]);
    },
  );
});
