import { err, ok, type Result } from "../units/result.ts";

/** A recording: one channel of samples in [-1, 1] at its own rate in Hz. */
export type Recording = { readonly rate: number; readonly samples: Float32Array };

type Format = {
  readonly code: number;
  readonly channels: number;
  readonly rate: number;
  readonly bits: number;
};
type Decode = (view: DataView, at: number) => number;

const pcm = 1;
const float = 3;
const extensible = 0xfffe;

/**
 * Reads a RIFF WAVE file: PCM of 8, 16, 24 or 32 bits or float of 32 or 64, any number of channels up to 8
 * (mixed to one), 8 to 96 kHz. A data chunk that claims more than the file holds (a recording cut short, a
 * stream written without a length) is read as far as it goes. Fails with one sentence.
 * Source: Microsoft/IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), chapter 3;
 * WAVE_FORMAT_EXTENSIBLE as documented for Windows.
 */
export function parseWav(bytes: Uint8Array): Result<Recording, string> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || tag(bytes, 0) !== "RIFF" || tag(bytes, 8) !== "WAVE") {
    return err("This is not a WAV file: it does not begin with RIFF and WAVE. Give a WAV recording.");
  }
  let format: Format | null = null;
  for (let at = 12; at + 8 <= bytes.length;) {
    const size = view.getUint32(at + 4, true);
    const body = at + 8;
    if (tag(bytes, at) === "fmt ") {
      if (size < 16 || body + 16 > bytes.length)
        return err("The WAV file's format chunk is cut short. Record it again.");
      format = readFormat(view, body, size);
    }
    if (tag(bytes, at) === "data") {
      if (format === null)
        return err("The WAV file has sound before its format is named. Save it again with another tool.");
      return readSamples(view, body, Math.min(size, bytes.length - body), format);
    }
    at = body + size + (size % 2);
  }
  return err("The WAV file holds no sound: its data chunk is missing. Record it again.");
}

function tag(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function readFormat(view: DataView, at: number, size: number): Format {
  const code = view.getUint16(at, true);
  const isExtended = code === extensible && size >= 26 && at + 26 <= view.byteLength;
  return {
    code: isExtended ? view.getUint16(at + 24, true) : code,
    channels: view.getUint16(at + 2, true),
    rate: view.getUint32(at + 4, true),
    bits: view.getUint16(at + 14, true),
  };
}

function readSamples(view: DataView, at: number, size: number, format: Format): Result<Recording, string> {
  const { channels, rate } = format;
  if (channels < 1 || channels > 8)
    return err(`The WAV file says it has ${channels} channels. Use one or two.`);
  if (rate < 8000 || rate > 96000) return err(`The WAV file is sampled at ${rate} Hz. Use 8000 to 96000 Hz.`);
  const decode = decoder(format);
  if (decode === null) {
    return err(
      `The WAV file is coded in a way that is not read here (code ${format.code}, ${format.bits} bits). Save it as 16-bit PCM.`,
    );
  }
  const width = format.bits / 8;
  const frames = Math.floor(size / (width * channels));
  if (frames === 0) return err("The WAV file holds no sound: its data chunk is empty. Record it again.");
  const samples = new Float32Array(frames);
  for (let frame = 0; frame < frames; frame++) {
    let sum = 0;
    for (let channel = 0; channel < channels; channel++)
      sum += decode(view, at + (frame * channels + channel) * width);
    const mean = sum / channels;
    samples[frame] = Number.isFinite(mean) ? Math.max(-1, Math.min(1, mean)) : 0;
  }
  return ok({ rate, samples });
}

function decoder({ code, bits }: Format): Decode | null {
  if (code === float) {
    if (bits === 32) return (view, at) => view.getFloat32(at, true);
    return bits === 64 ? (view, at) => view.getFloat64(at, true) : null;
  }
  if (code !== pcm) return null;
  switch (bits) {
    case 8:
      return (view, at) => (view.getUint8(at) - 128) / 128;
    case 16:
      return (view, at) => view.getInt16(at, true) / 0x8000;
    case 24:
      return (view, at) => (view.getUint16(at, true) + view.getInt8(at + 2) * 0x10000) / 0x800000;
    case 32:
      return (view, at) => view.getInt32(at, true) / 0x80000000;
    default:
      return null;
  }
}
