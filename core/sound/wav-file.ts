/**
 * Sound samples as a WAV file: one channel, 16-bit PCM, little-endian.
 * Source: the RIFF/WAVE layout of "Multimedia Programming Interface and Data Specifications 1.0" (IBM and
 * Microsoft, 1991), chunk "fmt " with format tag 1 (PCM).
 */

const headerBytes = 44;
const fullScale = 32_767;

function writeTag(view: DataView, at: number, tag: string): void {
  for (let i = 0; i < tag.length; i += 1) view.setUint8(at + i, tag.charCodeAt(i));
}

function writeHeader(view: DataView, sampleRate: number, soundBytes: number): void {
  writeTag(view, 0, "RIFF");
  view.setUint32(4, headerBytes - 8 + soundBytes, true);
  writeTag(view, 8, "WAVE");
  writeTag(view, 12, "fmt ");
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  writeTag(view, 36, "data");
  view.setUint32(40, soundBytes, true);
}

/**
 * @param samples mono, [-1, 1]; louder samples are clipped, NaN becomes silence
 * @param sampleRate in Hz, a whole number
 * @returns the whole file: a header of 44 bytes, then two bytes for each sample
 */
export function toWav(samples: Float32Array, sampleRate: number): Uint8Array {
  const file = new Uint8Array(headerBytes + samples.length * 2);
  const view = new DataView(file.buffer);
  writeHeader(view, sampleRate, samples.length * 2);
  samples.forEach((sample, i) => {
    const clipped = Number.isNaN(sample) ? 0 : Math.max(-1, Math.min(1, sample));
    view.setInt16(headerBytes + i * 2, Math.round(clipped * fullScale), true);
  });
  return file;
}
