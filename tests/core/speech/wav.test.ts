import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseWav } from "../../../core/speech/wav.ts";

type Shape = {
  readonly code: number;
  readonly channels: number;
  readonly rate: number;
  readonly bits: number;
};

function wav({ code, channels, rate, bits }: Shape, data: Uint8Array, claimed = data.length): Uint8Array {
  const bytes = new Uint8Array(44 + data.length);
  const view = new DataView(bytes.buffer);
  const write = (at: number, text: string): void =>
    bytes.set(
      [...text].map((letter) => letter.charCodeAt(0)),
      at,
    );
  write(0, "RIFF");
  view.setUint32(4, 36 + data.length, true);
  write(8, "WAVEfmt ");
  view.setUint32(16, 16, true);
  view.setUint16(20, code, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, rate, true);
  view.setUint16(32, (channels * bits) / 8, true);
  view.setUint16(34, bits, true);
  write(36, "data");
  view.setUint32(40, claimed, true);
  bytes.set(data, 44);
  return bytes;
}

const mono = { code: 1, channels: 1, rate: 16_000, bits: 16 };
const samplesOf = (bytes: Uint8Array): readonly number[] | string => {
  const result = parseWav(bytes);
  return result.ok ? [...result.value.samples] : result.error;
};

describe("WAV files", () => {
  it.each([
    [8, Uint8Array.of(0, 128, 192), [-1, 0, 0.5]],
    [16, Uint8Array.of(0, 0x80, 0, 0, 0, 0x40), [-1, 0, 0.5]],
    [24, Uint8Array.of(0, 0, 0x80, 0, 0, 0, 0, 0, 0x40), [-1, 0, 0.5]],
    [32, Uint8Array.of(0, 0, 0, 0x80, 0, 0, 0, 0, 0, 0, 0, 0x40), [-1, 0, 0.5]],
  ])("[V9] %i-bit PCM is read", (bits, data, samples) => {
    expect(samplesOf(wav({ ...mono, bits }, data))).toEqual(samples);
  });

  it("[V9] float is read, clipped, and what is no number is silence", () => {
    const data = new Uint8Array(Float32Array.of(0.25, 7, Number.NaN).buffer);
    expect(samplesOf(wav({ ...mono, code: 3, bits: 32 }, data))).toEqual([0.25, 1, 0]);
  });

  it("[V9] two channels are mixed to one", () => {
    expect(samplesOf(wav({ ...mono, channels: 2 }, Uint8Array.of(0, 0x40, 0, 0)))).toEqual([0.25]);
  });

  it("[V9] a data chunk that claims more than there is gives what there is", () => {
    expect(samplesOf(wav(mono, Uint8Array.of(0, 0x40, 0), 0xffffffff))).toEqual([0.5]);
  });

  it.each([
    [
      new Uint8Array(3),
      "This is not a WAV file: it does not begin with RIFF and WAVE. Give a WAV recording.",
    ],
    [
      wav({ ...mono, rate: 4_000 }, new Uint8Array(2)),
      "The WAV file is sampled at 4000 Hz. Use 8000 to 96000 Hz.",
    ],
    [
      wav({ ...mono, code: 6, bits: 8 }, new Uint8Array(2)),
      "The WAV file is coded in a way that is not read here (code 6, 8 bits). Save it as 16-bit PCM.",
    ],
    [wav(mono, new Uint8Array(0)), "The WAV file holds no sound: its data chunk is empty. Record it again."],
    [
      wav(mono, new Uint8Array(2)).subarray(0, 36),
      "The WAV file holds no sound: its data chunk is missing. Record it again.",
    ],
  ])("[V9] a file that cannot be heard is refused in one sentence (%#)", (bytes, sentence) => {
    expect(samplesOf(bytes)).toBe(sentence);
  });

  it("[V9] no bytes make it throw", () => {
    const whole = wav(mono, new Uint8Array(20));
    fc.assert(
      fc.property(fc.nat(43), fc.uint8Array({ maxLength: 8 }), fc.nat(64), (at, patch, length) => {
        const bytes = Uint8Array.from(whole);
        bytes.set(patch.subarray(0, bytes.length - at), at);
        parseWav(bytes.subarray(0, length));
      }),
    );
  });
});
