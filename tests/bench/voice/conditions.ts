import { readFileSync } from "node:fs";
import { resample } from "../../../core/speech/resample.ts";
import { listeningRate } from "../../../core/speech/samples.ts";
import { parseWav } from "../../../core/speech/wav.ts";
import { withSurroundings } from "../../voice/mix.ts";
import { makeNoise, type NoiseKind, noiseKinds, seeds } from "../../voice/noises.ts";
import { inRoom, roomResponse } from "../../voice/rooms.ts";

/** What a sentence is said in. */
export type Condition =
  | { readonly name: string; readonly kind: "quiet" }
  | { readonly name: string; readonly kind: "room"; readonly metres: number }
  | { readonly name: string; readonly kind: NoiseKind; readonly snrDb: number };

/** Twenty-eight of them: the quiet, three distances in a reverberant room, and each noise at four levels. */
export const conditions: readonly Condition[] = [
  { name: "quiet", kind: "quiet" },
  ...[1, 2, 3].map((metres) => ({ name: `room ${metres} m`, kind: "room", metres }) as const),
  ...noiseKinds.flatMap((kind) =>
    [20, 10, 5, 0].map((snrDb) => ({ name: `${kind} ${snrDb} dB`, kind, snrDb })),
  ),
];

/** Noise goes on this long before the words and after them, so that an ear can learn the room and find the end. */
const lead = { leadS: 1.5, tailS: 1.5 } as const;

/** A recording as the ears take it, mono at 16 kHz. */
export function samplesOf(path: string): Float32Array {
  const recording = parseWav(readFileSync(path));
  if (!recording.ok) throw new Error(recording.error);
  return resample(recording.value.samples, recording.value.rate, listeningRate);
}

/**
 * A sentence as the microphone has it.
 * @param turn counts the trials: each has a noise, a room and talkers of its own, from the seeds for checking
 * @param others what the talkers say
 */
export function heardIn(
  condition: Condition,
  speech: Float32Array,
  turn: number,
  others: readonly Float32Array[],
): Float32Array {
  const seed = (seeds.check[turn % seeds.check.length] ?? 0) + 1000 * turn;
  const seconds = speech.length / listeningRate + lead.leadS + lead.tailS;
  if (condition.kind === "quiet")
    return withSurroundings(speech, makeNoise("extractor fan", seconds, seed), { ...lead, snrDb: 45 });
  if (condition.kind === "room") {
    const there = inRoom(speech, roomResponse({ rt60S: 0.4, metres: condition.metres, seed }));
    const hum = makeNoise("extractor fan", seconds + 1, seed);
    return withSurroundings(there, hum, { ...lead, snrDb: 40 - 3 * condition.metres });
  }
  const noise = makeNoise(condition.kind, seconds, seed, others);
  return withSurroundings(speech, noise, { ...lead, snrDb: condition.snrDb });
}
