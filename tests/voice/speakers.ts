import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { speak, type Voice, voices } from "./synthetic-voices.ts";

/** Somebody who can say sentences. */
export type Speaker = {
  readonly name: string;
  /** Whether limits of the recogniser were set by what this voice came to. */
  readonly tunedOn: "yes" | "no";
  /** Paths of WAV files, one a sentence. */
  readonly speak: (sentences: readonly string[]) => Promise<readonly string[]>;
};

/**
 * All seven voices have had a part in setting the limits of core/speech/acceptance.ts. Played a little faster or
 * slower, a voice has a shorter or longer throat, another pitch and another pace: somebody whom nothing was tuned on.
 * These five were chosen before any was heard.
 */
const strangers: readonly (readonly [voice: Voice, factor: number])[] = [
  ["rms", 1.12],
  ["slt", 0.9],
  ["awb", 1.08],
  ["kal16", 0.94],
  ["festival-ked", 1.1],
];

/** Those that the limits were set with, then the strangers. */
export const allSpeakers: readonly Speaker[] = [
  ...voices.map((voice): Speaker => ({
    name: voice,
    tunedOn: "yes",
    speak: (sentences) => speak(voice, sentences),
  })),
  ...strangers.map(([voice, factor]): Speaker => ({
    name: `${voice} x ${factor}`,
    tunedOn: "no",
    speak: async (sentences) => (await speak(voice, sentences)).map((path) => played(path, factor)),
  })),
];

/** Where the rate and the bytes a second stand in the header of a plain PCM file. */
const rateAt = 24;
const bytesASecondAt = 28;

/** A copy that is played so many times faster: only the rate in its header is another. */
function played(path: string, factor: number): string {
  const copy = path.replace(/\.wav$/, `-x${factor}.wav`);
  if (existsSync(copy)) return copy;
  const bytes = readFileSync(path);
  for (const at of [rateAt, bytesASecondAt])
    bytes.writeUInt32LE(2 * Math.round((bytes.readUInt32LE(at) * factor) / 2), at);
  writeFileSync(copy, bytes);
  return copy;
}
