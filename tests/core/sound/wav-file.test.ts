import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { trimSilence } from "../../../core/sound/trim-silence.ts";
import { toWav } from "../../../core/sound/wav-file.ts";

const samplesOf = (wav: Uint8Array): Int16Array => new Int16Array(wav.slice(44).buffer);

describe("a WAV file", () => {
  it("[S15] has the header of a 16-bit mono PCM file, byte for byte", () => {
    // Layout: "Multimedia Programming Interface and Data Specifications 1.0", IBM and Microsoft, 1991 (from memory).
    expect(Buffer.from(toWav(new Float32Array([0, 1, -1]), 48_000)).toString("hex")).toBe(
      "524946462a00000057415645" +
        "666d7420100000000100010080bb000000770100" +
        "02001000" +
        "6461746106000000" +
        "0000ff7f0180",
    );
  });

  it("[S15] louder samples are clipped, and no number is silence", () => {
    expect([...samplesOf(toWav(new Float32Array([2, -2, Number.NaN]), 8_000))]).toEqual([32_767, -32_767, 0]);
  });

  it("[S15] every sample survives to half a step", () => {
    fc.assert(
      fc.property(fc.float32Array({ min: -1, max: 1, noNaN: true }), (samples) => {
        samplesOf(toWav(samples, 16_000)).forEach((kept, i) => {
          expect(Math.abs(kept / 32_767 - (samples[i] ?? 0))).toBeLessThanOrEqual(0.5 / 32_767 + 1e-7);
        });
      }),
    );
  });
});

describe("silence round a sentence", () => {
  const sentence = (before: number, sound: number, after: number): Uint8Array =>
    toWav(
      Float32Array.from({ length: before + sound + after }, (_unused, i) =>
        i >= before && i < before + sound ? 0.5 : 0,
      ),
      16_000,
    );

  it("[S22] all but 20 ms before and 80 ms after goes, and the header tells the truth", () => {
    const trimmed = trimSilence(sentence(4_000, 1_600, 4_000));
    expect(samplesOf(trimmed).length).toBe(320 + 1_600 + 1_280);
    const view = new DataView(trimmed.buffer);
    expect([view.getUint32(4, true), view.getUint32(40, true)]).toEqual([
      trimmed.byteLength - 8,
      trimmed.byteLength - 44,
    ]);
  });

  it("[S22] a sound without silence, and one of nothing but silence, come back whole", () => {
    expect(trimSilence(sentence(0, 800, 0))).toEqual(sentence(0, 800, 0));
    expect(trimSilence(sentence(500, 0, 0))).toEqual(sentence(500, 0, 0));
    expect(trimSilence(sentence(0, 0, 0))).toEqual(sentence(0, 0, 0));
  });
});
