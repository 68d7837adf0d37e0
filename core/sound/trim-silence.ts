/**
 * A synthesiser leaves up to a quarter of a second of silence before and after a sentence. The silence before it is
 * time that the cook waits, so all but a breath of it goes.
 */

const headerBytes = 44;
const keepBeforeMs = 20;
const keepAfterMs = 80;
/** Of a full scale of 32,768: 40 dB below a spoken vowel of ordinary loudness, above the synthesiser's noise. */
const quiet = 100;

function soundEnds(view: DataView, count: number): { readonly first: number; readonly last: number } {
  const loud = (i: number): boolean => Math.abs(view.getInt16(headerBytes + i * 2, true)) > quiet;
  let first = 0;
  while (first < count && !loud(first)) first += 1;
  let last = count - 1;
  while (last > first && !loud(last)) last -= 1;
  return { first, last };
}

/**
 * @param wav a WAV file with the plain header of 44 bytes, 16-bit mono
 * @returns a WAV file of its own memory with at most 20 ms of silence before and 80 ms after the sound, and with
 * lengths in its header that are true; a file without any sound comes back whole
 */
export function trimSilence(wav: Uint8Array): Uint8Array {
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  const sampleRate = view.getUint32(24, true);
  const count = Math.floor((wav.byteLength - headerBytes) / 2);
  const { first, last } = soundEnds(view, count);
  const silent = first >= count;
  const from = silent ? 0 : Math.max(0, first - Math.round((keepBeforeMs * sampleRate) / 1000));
  const to = silent ? count : Math.min(count, last + 1 + Math.round((keepAfterMs * sampleRate) / 1000));
  const trimmed = new Uint8Array(headerBytes + (to - from) * 2);
  trimmed.set(wav.subarray(0, headerBytes));
  trimmed.set(wav.subarray(headerBytes + from * 2, headerBytes + to * 2), headerBytes);
  const lengths = new DataView(trimmed.buffer);
  lengths.setUint32(4, trimmed.byteLength - 8, true);
  lengths.setUint32(40, trimmed.byteLength - headerBytes, true);
  return trimmed;
}
