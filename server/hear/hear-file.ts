import { readFile } from "node:fs/promises";
import type { HearingEvent } from "../../core/speech/hearing-event.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import { resample } from "../../core/speech/resample.ts";
import { frameMs, listeningRate } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import type { Verdict } from "../../core/speech/verdict.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { type NodeHearing, openNodeHearing } from "./node-hearing.ts";

/** What to listen for in a file: nobody speaks into it. In mode "addressed" the address must be given. */
export type HearOptions = Omit<ListenFor, "mode" | "stopSentences"> & { readonly mode: "addressed" | "open" };

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

/** Makes a hearer; what it hears with loads with the first file and stays until `close`. */
export function createFileHearer(): FileHearer {
  let ready: Listener | null = null;
  return {
    hearFile: async (path, options) => {
      const samples = await readSamples(path);
      if (!samples.ok) return samples;
      if (ready === null) {
        const opened = await openNodeHearing();
        if (!opened.ok) return opened;
        ready = { ...opened.value, options: null };
      }
      const set = await listen(ready, options);
      if (!set.ok) return set;
      // Each file is a voice and a room of its own: what comes out must not depend on the file before.
      await ready.hearing.reset();
      const events = [...(await ready.hearing.accept(samples.value)), ...(await ready.hearing.finish())];
      return ok(summary(events));
    },
    close: () => {
      ready?.free();
      ready = null;
    },
  };
}

type Listener = NodeHearing & { options: HearOptions | null };

/** Sets the grammar unless it is the one already set; after a refusal the next file sets its own. */
async function listen(listener: Listener, wanted: HearOptions): Promise<Result<null, string>> {
  const { options } = listener;
  const isSame =
    options?.grammar === wanted.grammar && options.address === wanted.address && options.mode === wanted.mode;
  if (isSame) return ok(null);
  listener.options = null;
  const set = await listener.hearing.listenFor({ ...wanted, stopSentences: [] }, "after-utterance");
  if (set.ok) listener.options = wanted;
  return set;
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
