import { describe, expect, it } from "vitest";
import { createOffsetFilter, createSpeechMeter, loudness } from "../../../core/speech/loudness.ts";
import { createResampler, resample } from "../../../core/speech/resample.ts";
import { createRoomTone, roomToneDbfs } from "../../../core/speech/room-tone.ts";
import { createFramer, fromInt16, joinSamples, toInt16 } from "../../../core/speech/samples.ts";

const sine = (hz: number, rate: number, seconds: number): Float32Array =>
  Float32Array.from({ length: Math.round(rate * seconds) }, (_, at) =>
    Math.sin((2 * Math.PI * hz * at) / rate),
  );

describe("sound", () => {
  it("[V11] a full-scale sine is 3.01 dB below a full-scale square, which is 0 dBFS", () => {
    expect(loudness(sine(1000, 16_000, 1))).toBeCloseTo(-3.01, 2); // 10 log10(1/2), from the definition of RMS
    expect(loudness(Float32Array.of(1, -1, 1, -1))).toBe(0);
    expect(loudness(new Float32Array(10))).toBe(-Infinity);
  });

  it("[V11] a constant offset is gone at once and a voice is not", () => {
    const voice = sine(300, 16_000, 1);
    const filtered = createOffsetFilter(16_000)(voice.map((sample) => 0.2 + 0.1 * sample));
    expect(loudness(filtered)).toBeCloseTo(loudness(voice) - 20, 0);
    expect(loudness(createOffsetFilter(16_000)(new Float32Array(1600).fill(0.3)))).toBe(-Infinity);
  });

  it("[V11] the speech meter hears 1 kHz in full and a 50 Hz hum 25 dB down", () => {
    const settled = (hz: number): number => {
      const meter = createSpeechMeter(16_000);
      meter(sine(hz, 16_000, 0.5));
      return meter(sine(hz, 16_000, 0.5));
    };
    expect(settled(1000)).toBeCloseTo(-3.01, 0);
    expect(settled(50)).toBeLessThan(-28);
  });

  it.each([8_000, 11_025, 44_100, 48_000, 96_000])(
    "[V10] a 1 kHz sine of %i Hz is the same sine at 16 kHz",
    (rate) => {
      const out = resample(sine(1000, rate, 0.5), rate, 16_000);
      const wanted = sine(1000, 16_000, 0.5);
      const error = out.map((sample, at) => sample - (wanted[at] ?? 0)).subarray(400, -400);
      expect(Math.abs(out.length - 8_000)).toBeLessThanOrEqual(1);
      expect(loudness(error)).toBeLessThan(-50);
    },
  );

  it("[V10] what lies above the new band is kept out of it", () => {
    expect(loudness(resample(sine(12_000, 48_000, 0.5), 48_000, 16_000).subarray(400, -400))).toBeLessThan(
      -60,
    );
  });

  it("[V10] blocks of any length give what one block gives", () => {
    const input = sine(440, 44_100, 0.3);
    const whole = createResampler(44_100, 16_000)(input);
    const stream = createResampler(44_100, 16_000);
    const parts: Float32Array[] = [];
    for (let at = 0, length = 1; at < input.length; at += length, length = (length * 7) % 311)
      parts.push(stream(input.subarray(at, at + length)));
    const joined = joinSamples(parts);
    expect(joined.length).toBe(whole.length);
    expect(Math.max(...joined.map((sample, at) => Math.abs(sample - (whole[at] ?? 0))))).toBeLessThan(1e-3);
  });

  it("[V10] 16-bit integers survive the way to samples and back, and too loud is clipped", () => {
    const integers = Int16Array.of(-32768, -1, 0, 1, 32767);
    expect(toInt16(fromInt16(integers))).toEqual(integers);
    expect(toInt16(Float32Array.of(2, -2))).toEqual(Int16Array.of(32767, -32768));
  });

  it("[V20] a faint hiss of the level named lies under silence, the same each time", () => {
    const silence = new Float32Array(16_000);
    expect(loudness(createRoomTone()(silence))).toBeCloseTo(roomToneDbfs, 0);
    expect(createRoomTone()(silence)).toEqual(createRoomTone()(silence));
  });

  it("[V10] a framer cuts blocks into whole frames and keeps the rest", () => {
    const cut = createFramer(3);
    expect(cut(Float32Array.of(1, 2))).toEqual([]);
    expect(cut(Float32Array.of(3, 4, 5, 6, 7))).toEqual([Float32Array.of(1, 2, 3), Float32Array.of(4, 5, 6)]);
  });
});
