import { loudness } from "../../core/speech/loudness.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { activeLevel, spanOfSpeech } from "./active-level.ts";

/** What becomes of a mix that is louder than full scale: all of it turned down, or cut off as a microphone would. */
export type Overload = "turn-down" | "clip";

/** How much noise lies round the words, in seconds, and how far the words stand above it, in dB. */
export type Surroundings = { readonly leadS: number; readonly tailS: number; readonly snrDb: number };

/**
 * Speech with noise under it, as long as the speech. The signal-to-noise ratio is the active speech level (ITU-T P.56)
 * over the root mean square of the noise from the first word to the last, so neither pauses nor the silence round a
 * recording count. The speech keeps its level, unless the mix would clip: then both are turned down alike.
 * @param speech mono, 16 kHz; throws where it is silent
 * @param noise mono, 16 kHz, taken from its start; shorter noise goes round; throws where it is silent
 */
export function mixAt(
  speech: Float32Array,
  noise: Float32Array,
  snrDb: number,
  overload: Overload = "turn-down",
): Float32Array {
  return withSurroundings(speech, noise, { leadS: 0, tailS: 0, snrDb }, overload);
}

/** The same with the noise going on before the first sample of the speech and after its last, at the same level. */
export function withSurroundings(
  speech: Float32Array,
  noise: Float32Array,
  { leadS, tailS, snrDb }: Surroundings,
  overload: Overload = "turn-down",
): Float32Array {
  const lead = Math.round(leadS * listeningRate);
  const mixed = goingRound(noise, lead + speech.length + Math.round(tailS * listeningRate));
  const [from, to] = spanOfSpeech(speech);
  const gainDb = activeLevel(speech) - snrDb - loudness(mixed.subarray(lead + from, lead + to));
  if (!Number.isFinite(gainDb))
    throw new Error("Silence has no level: give speech and noise that can be heard.");
  const gain = 10 ** (gainDb / 20);
  for (const [at, sample] of mixed.entries()) mixed[at] = gain * sample + (speech[at - lead] ?? 0);
  return withinScale(mixed, overload);
}

/** At most full scale, in one of two ways. */
function withinScale(samples: Float32Array, overload: Overload): Float32Array {
  if (overload === "clip") return samples.map((sample) => Math.max(-1, Math.min(1, sample)));
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return peak <= 1 ? samples : samples.map((sample) => (sample * 0.999) / peak);
}

/** So many samples of a sound, from its start again where it ends, one faded into the other over 50 ms: no click. */
export function goingRound(sound: Float32Array, count: number): Float32Array {
  if (sound.length >= count) return sound.slice(0, count);
  const fade = Math.min(Math.floor(sound.length / 2), listeningRate / 20);
  const round = sound.length - fade;
  if (round === 0) throw new Error("A sound of no length cannot go round.");
  const out = new Float32Array(count);
  for (let start = 0; start < count; start += round) {
    for (let at = 0; at < sound.length && start + at < count; at++) {
      const rising = start > 0 && at < fade ? Math.sqrt((at + 0.5) / fade) : 1;
      const falling = at >= round ? Math.sqrt((sound.length - at - 0.5) / fade) : 1;
      out[start + at] = (out[start + at] ?? 0) + (sound[at] ?? 0) * rising * falling;
    }
  }
  return out;
}
