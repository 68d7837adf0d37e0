import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { resample } from "../../../core/speech/resample.ts";
import { parseWav } from "../../../core/speech/wav.ts";
import { toWav } from "../../../core/sound/wav-file.ts";
import { root } from "../../../tools/run.ts";
import { asWav } from "../../voice/speech-that-is-no-command.ts";
import { speak, type Voice } from "../../voice/synthetic-voices.ts";

/** Something heard at a moment, in seconds from the start of the recording. */
export type Sounding =
  | { readonly at: number; readonly voice: Voice; readonly says: string }
  /** A recording of somebody who does not mean the kitchen. */
  | { readonly at: number; readonly recording: string };

/** The rate of Chromium's fake microphone. */
const rate = 48_000;
/** Hiss of a quiet room: about -66 dBFS. */
const hiss = 0.001;
/** How loud a voice arrives at its loudest: somebody at the stove, a step away from the tablet. */
const voicePeak = 0.5;

/** One spoken sentence or recording at 48 kHz, levelled. */
async function soundOf(sounding: Sounding): Promise<Float32Array> {
  const path = "says" in sounding ? (await speak(sounding.voice, [sounding.says]))[0] : sounding.recording;
  const parsed = parseWav("says" in sounding ? readFileSync(path ?? "") : asWav(path ?? ""));
  if (!parsed.ok) throw new Error(`${path ?? "a recording"}: ${parsed.error}`);
  const sound = resample(parsed.value.samples, parsed.value.rate, rate);
  const peak = sound.reduce((loudest, sample) => Math.max(loudest, Math.abs(sample)), 1e-6);
  return sound.map((sample) => (sample * voicePeak) / peak);
}

/** A room's hiss, the same each time. */
function hissing(length: number): Float32Array {
  let seed = 1;
  return Float32Array.from({ length }, () => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return (seed / 2 ** 31 - 1) * hiss;
  });
}

/** A recording with everything in its place, and when each sound in it ends (seconds from its start). */
export interface Track {
  readonly path: string;
  readonly ends: readonly number[];
}

/**
 * Writes one 48 kHz, mono, 16-bit WAV file under tests/.out. Throws where two sounds would overlap.
 * @param tail seconds of hiss after the last sound
 */
export async function recordTrack(
  name: string,
  soundings: readonly Sounding[],
  tail: number,
): Promise<Track> {
  const sounds: Float32Array[] = [];
  for (const sounding of soundings) sounds.push(await soundOf(sounding));
  const ends = soundings.map(({ at }, index) => at + (sounds[index]?.length ?? 0) / rate);
  soundings.forEach(({ at }, index) => {
    if (at < (ends[index - 1] ?? 0))
      throw new Error(`what sounds at ${at} s begins before the one before it has ended`);
  });
  const track = hissing(Math.ceil(((ends.at(-1) ?? 0) + tail) * rate));
  soundings.forEach(({ at }, index) => {
    const from = Math.round(at * rate);
    sounds[index]?.forEach((sample, offset) => (track[from + offset] = (track[from + offset] ?? 0) + sample));
  });
  const folder = `${root}tests/.out/spoken`;
  mkdirSync(folder, { recursive: true });
  const mark = createHash("sha256").update(JSON.stringify(soundings)).digest("hex").slice(0, 8);
  const path = join(folder, `track-${name}-${mark}.wav`);
  writeFileSync(path, toWav(track, rate));
  return { path, ends };
}

/** One sentence as Chromium's Web Audio takes it: 48 kHz, mono. */
export async function spokenSamples(voice: Voice, says: string): Promise<Float32Array> {
  return soundOf({ at: 0, voice, says });
}
