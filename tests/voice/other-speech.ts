import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { resample } from "../../core/speech/resample.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import { passages, type Talker } from "./passages.ts";
import { recordedSpeech } from "./recorded-speech.ts";
import { createChance } from "./seeded.ts";
import { asWav } from "./speech-that-is-no-command.ts";
import { festivalNames, type Voice } from "./synthetic-voices.ts";

const run = promisify(execFile);

/** Something that somebody says and that commands no kitchen; mono samples at 16 kHz. */
export type OtherUtterance = {
  readonly text: string;
  readonly speaker: string;
  readonly samples16k: Float32Array;
};

/** Which speech, and after how much of it to stop; the utterance under way is let end. */
export type OtherSpeechOptions = { readonly seed: number; readonly seconds: number };

/** The figure that false commands are counted over. */
export const tenHours = 36_000;

/** Of the utterances, one in so many is a recording of a person until each was played once (26 minutes in all). */
const recordingsEvery = 4;

/**
 * Hours of speech that commands no kitchen, made as it is asked for, the same for the same seed: Debian's recordings of
 * people among chatter, calls, programmes, children, guests and books, spoken by seven voices at several paces. Another
 * seed is other talk, so an hour of one seed is a fair sample. Nothing is kept on disk; nobody says "listen kitchen".
 * @throws where flite or festival is missing or fails
 */
export async function* otherSpeech({
  seed,
  seconds,
}: OtherSpeechOptions): AsyncGenerator<OtherUtterance, void> {
  const chance = createChance(seed ^ 0x5eed);
  const recordings = shuffled(recordedSpeech(), chance.whole);
  const talk = passages(seed);
  const folder = await mkdtemp(join(tmpdir(), `stovecall-other-${process.pid}-`));
  try {
    for (let samples = 0; samples < seconds * listeningRate;) {
      const recording = chance.whole(recordingsEvery) === 0 ? recordings.pop() : undefined;
      const said = recording === undefined ? await spoken(talk.next().value, folder) : played(recording);
      samples += said.samples16k.length;
      yield said;
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function shuffled<T>(list: readonly T[], whole: (count: number) => number): T[] {
  return list
    .map((item) => ({ item, place: whole(0x1000_0000) }))
    .sort((a, b) => a.place - b.place)
    .map(({ item }) => item);
}

function played({ path, text }: { readonly path: string; readonly text: string }): OtherUtterance {
  const wav = path.endsWith(".raw") ? asWav(path) : readFileSync(path);
  const speaker = path.includes("asterisk") ? "asterisk" : "pocketsphinx";
  return { text, speaker, samples16k: at16k(wav, 1) };
}

async function spoken(
  { talker, text }: { readonly talker: Talker; readonly text: string },
  folder: string,
): Promise<OtherUtterance> {
  const path = join(folder, "passage.wav");
  await say(talker.voice, text, path);
  const samples16k = at16k(await readFile(path), talker.factor);
  return {
    text,
    speaker: talker.factor === 1 ? talker.voice : `${talker.voice} x ${talker.factor}`,
    samples16k,
  };
}

function at16k(wav: Uint8Array, factor: number): Float32Array {
  const read = parseWav(wav);
  if (!read.ok) throw new Error(read.error);
  return resample(read.value.samples, read.value.rate * factor, listeningRate);
}

/**
 * Speaks a passage into a file. Not by `speak` of synthetic-voices.ts: that keeps what it made, and ten hours are a
 * gigabyte; and two benches at once must not write one file.
 */
async function say(voice: Voice, text: string, path: string): Promise<void> {
  const festival = festivalNames[voice];
  if (festival === undefined) {
    await run("flite", ["-voice", voice, "-t", text, "-o", path]);
    return;
  }
  const said = text.replaceAll(/["\\]/g, " ");
  const script = `${path}.scm`;
  await writeFile(
    script,
    `(${festival})\n(utt.save.wave (utt.synth (Utterance Text "${said}")) "${path}" 'riff)\n`,
  );
  await run("festival", ["-b", script]);
}
