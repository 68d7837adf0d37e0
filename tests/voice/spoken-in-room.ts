import { readFile } from "node:fs/promises";
import { resample } from "../../core/speech/resample.ts";
import { joinSamples, listeningRate } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import { speak, type Voice } from "./synthetic-voices.ts";

/** 300 ms of a quiet room, faint and regular. */
const room = Float32Array.from({ length: 4800 }, (_, at) => 1e-4 * Math.sin(at * 1.7) * Math.sin(at * 0.37));

/** A sentence that a voice says, as the endpointer hands an utterance over: with some of the room before and after. */
export async function spokenInRoom(voice: Voice, text: string): Promise<Float32Array> {
  return joinSamples([room, await spokenDry(voice, text), room]);
}

/** A sentence that a voice says, mono at 16 kHz, and nothing round it. */
export async function spokenDry(voice: Voice, text: string): Promise<Float32Array> {
  const [path = ""] = await speak(voice, [text]);
  const recording = parseWav(await readFile(path));
  if (!recording.ok) throw new Error(recording.error);
  return resample(recording.value.samples, recording.value.rate, listeningRate);
}
