import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);

/**
 * The voices of Debian that were built from recordings of people: flite's rms, slt, awb and kal16, and
 * festival's slt (statistical), kal and ked (diphones). Formant voices sound unlike anybody and are no test.
 */
export const voices = ["rms", "slt", "awb", "kal16", "festival-slt", "festival-kal", "festival-ked"] as const;

/** One of the installed voices. */
export type Voice = (typeof voices)[number];

/** What festival calls the voices that are its own. */
export const festivalNames: Partial<Record<Voice, string>> = {
  "festival-slt": "voice_cmu_us_slt_arctic_hts",
  "festival-kal": "voice_kal_diphone",
  "festival-ked": "voice_ked_diphone",
};

const folder = join(import.meta.dirname, "..", ".out", "spoken");

/** Where the recording of a sentence by a voice lies once it was made. */
export function recordingPath(voice: Voice, text: string): string {
  const name = text.replaceAll(/[^a-z]+/gi, "-").slice(0, 40);
  const mark = createHash("sha256").update(text).digest("hex").slice(0, 8);
  return join(folder, `${voice}-${name}-${mark}.wav`);
}

/** Speaks sentences into WAV files, each made once and kept under tests/.out; returns their paths in order. */
export async function speak(voice: Voice, texts: readonly string[]): Promise<readonly string[]> {
  mkdirSync(folder, { recursive: true });
  const missing = texts.filter((text) => !existsSync(recordingPath(voice, text)));
  const festival = festivalNames[voice];
  if (festival === undefined) {
    for (const text of missing)
      await run("flite", ["-voice", voice, "-t", text, "-o", recordingPath(voice, text)]);
  } else if (missing.length > 0) {
    const script = missing.map((text) => {
      const said = text.replaceAll(/["\\]/g, " ");
      return `(utt.save.wave (utt.synth (Utterance Text "${said}")) "${recordingPath(voice, text)}" 'riff)`;
    });
    const file = join(folder, `${voice}-${process.pid}.scm`);
    writeFileSync(file, [`(${festival})`, ...script, ""].join("\n"));
    await run("festival", ["-b", file]);
  }
  return texts.map((text) => recordingPath(voice, text));
}
