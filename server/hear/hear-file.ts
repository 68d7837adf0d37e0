import { readFile } from "node:fs/promises";
import { embeddedAcceptance, type Verdict } from "../../core/speech/acceptance.ts";
import { createHearing, defaultHearingTimes, type HearingEvent } from "../../core/speech/hearing.ts";
import { defaultEndpointer } from "../../core/speech/endpointer.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import type { ListeningMode } from "../../core/speech/jsgf.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import { resample } from "../../core/speech/resample.ts";
import { frameMs, listeningRate } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { createNodeRecogniser } from "./node-recogniser.ts";

/** What to listen for in a file. In mode "addressed" the address must be given. */
export type HearOptions = {
  readonly grammar: Grammar;
  readonly address: string | null;
  readonly mode: ListeningMode;
};

/** One utterance of the file: seconds from its start, and what it came to. */
export type HeardSegment = { readonly startS: number; readonly endS: number; readonly verdict: Verdict };

/** What a file came to. */
export type HeardFile = {
  /** The first command's words, lower case, without the address; null where no utterance was one. */
  readonly heard: string | null;
  /** Of that command, 0 to 1; null where there is none. */
  readonly confidence: number | null;
  readonly segments: readonly HeardSegment[];
};

/** Hears files one after another with one recogniser. */
export type FileHearer = {
  /** Fails with one sentence that names the file. */
  readonly hearFile: (path: string, options: HearOptions) => Promise<Result<HeardFile, string>>;
  readonly close: () => void;
};

/** Makes a hearer; the recogniser loads with the first file and stays until `close`. */
export function createFileHearer(): FileHearer {
  const recogniser = createNodeRecogniser();
  let hearing: ReturnType<typeof createHearing> | null = null;
  let listening: ListenFor | null = null;
  const ready = async (options: HearOptions): Promise<Result<NonNullable<typeof hearing>, string>> => {
    if (hearing === null) {
      const loaded = await recogniser.load();
      if (!loaded.ok) return loaded;
      hearing = createHearing(recogniser, {
        ...defaultHearingTimes,
        endpointer: defaultEndpointer,
        acceptance: embeddedAcceptance,
      });
    }
    const isSame =
      listening?.grammar === options.grammar &&
      listening.address === options.address &&
      listening.mode === options.mode;
    if (!isSame) {
      const set = await hearing.listenFor(options, "now");
      if (!set.ok) return set;
      listening = options;
    }
    return ok(hearing);
  };
  return {
    hearFile: async (path, options) => {
      const samples = await readSamples(path);
      if (!samples.ok) return samples;
      const prepared = await ready(options);
      if (!prepared.ok) return prepared;
      await prepared.value.reset();
      const events = [...(await prepared.value.accept(samples.value)), ...(await prepared.value.finish())];
      return ok(summary(events));
    },
    close: () => {
      recogniser.free();
      hearing = null;
    },
  };
}

async function readSamples(path: string): Promise<Result<Float32Array, string>> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch {
    return err(`The file ${path} cannot be read. Check its name and that you may read it.`);
  }
  const recording = parseWav(bytes);
  if (!recording.ok) return err(`${path}: ${recording.error}`);
  const { samples, rate } = recording.value;
  const heard = resample(samples, rate, listeningRate);
  const padded = new Float32Array(heard.length + quietSamples);
  padded.set(heard);
  return ok(padded);
}

/** Quiet put after the file, as there is after a sentence, so that its end is found as in a kitchen. */
const quietSamples = listeningRate;

function summary(events: readonly HearingEvent[]): HeardFile {
  const segments = events.flatMap((event): readonly HeardSegment[] => {
    if (event.kind !== "heard") return [];
    const seconds = (frame: number): number => (frame * frameMs) / 1000;
    return [
      {
        startS: seconds(event.startedAtFrame),
        endS: seconds(event.endedAtFrame + 1),
        verdict: event.verdict,
      },
    ];
  });
  for (const { verdict } of segments) {
    if (verdict.kind === "command")
      return { heard: verdict.words.join(" "), confidence: verdict.confidence, segments };
  }
  return { heard: null, confidence: null, segments };
}
