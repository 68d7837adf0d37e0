import type { Worker } from "node:worker_threads";
import { err, ok, type Result } from "../../core/units/result.ts";
import { trimSilence } from "../../core/sound/trim-silence.ts";
import { speechCache } from "./speech-cache.ts";
import { speechJob, type SpeechJob, type VoiceName } from "./speech-request.ts";
import { voiceThread, type VoiceFault } from "./voice-thread.ts";

/** How a text is to be spoken, and whether somebody waits for it. */
export interface SpeakOptions {
  readonly voice: VoiceName;
  /** 1 is the voice's own pace; 0.5 to 2. */
  readonly rate: number;
  /** "ahead" for sentences fetched before they are needed: they wait for every "now". "now" unless given. */
  readonly urgency?: "now" | "ahead";
}

/** The bundled voice. */
export interface Voice {
  /** A whole WAV file, 16-bit mono; or one sentence that says what is wrong and what to do. */
  readonly speak: (text: string, options: SpeakOptions) => Promise<Result<Uint8Array, string>>;
  /** Loads the synthesiser in its thread now (about half a second of one core) instead of at the first sentence. */
  readonly warm: () => void;
  /** Ends the thread; everything still waiting is answered with a sentence. */
  readonly close: () => Promise<void>;
}

/** Bounds of the voice, each with a default that suits a kitchen. */
export interface VoiceOptions {
  /** Sentences remembered; 400 unless given. */
  readonly maxEntries?: number;
  /** Bytes of sound remembered; 48 MiB unless given. */
  readonly maxBytes?: number;
  /** Sentences that may wait at once; 128 unless given. */
  readonly maxWaiting?: number;
  /** Milliseconds to load the synthesiser; 20,000 unless given, for a slow machine under load. */
  readonly startMs?: number;
  /** Milliseconds for one sentence; 8,000 unless given. */
  readonly sentenceMs?: number;
  readonly startWorker?: () => Worker;
}

interface Task {
  readonly key: string;
  readonly job: SpeechJob;
  urgency: "now" | "ahead";
  readonly outcome: Promise<Result<Uint8Array, string>>;
  readonly settle: (outcome: Result<Uint8Array, string>) => void;
}

const closed = "The voice is switched off because the server is stopping; read the captions on the screen.";
const crowded = "Too many sentences wait to be spoken; try again in a moment.";

function faultSentence(fault: VoiceFault): string {
  switch (fault.kind) {
    case "refused": return "The voice could not speak this text; word it differently.";
    case "died": return "The voice stopped working in the middle of the sentence; it is started again, so try once more.";
    case "slow": return "The voice took too long for this sentence; try again, or shorten it.";
  }
}

function newTask(key: string, job: SpeechJob, urgency: "now" | "ahead"): Task {
  let settle: Task["settle"] = () => { throw new Error("A task was settled before it was made."); };
  const outcome = new Promise<Result<Uint8Array, string>>((resolve) => { settle = resolve; });
  return { key, job, urgency, outcome, settle };
}

/** The order of work: what somebody waits for, then what is fetched ahead; in each the oldest first. */
function takeNext(waiting: Task[]): Task | undefined {
  const urgent = waiting.findIndex((task) => task.urgency === "now");
  return waiting.splice(Math.max(0, urgent), 1)[0];
}

/**
 * Starts nothing until the first sentence. One sentence is synthesised at a time; the same sentence asked for twice
 * is synthesised once; a thread that dies is started again and the sentence tried once more.
 */
export function createVoice(options: VoiceOptions = {}): Voice {
  const cache = speechCache({ maxEntries: options.maxEntries ?? 400, maxBytes: options.maxBytes ?? 48 * 2 ** 20 });
  const thread = voiceThread({ startMs: options.startMs ?? 20_000, sentenceMs: options.sentenceMs ?? 8_000 }, options.startWorker);
  const maxWaiting = options.maxWaiting ?? 128;
  const pending = new Map<string, Task>();
  const waiting: Task[] = [];
  let busy = false;
  let open = true;

  const synthesise = async (task: Task): Promise<Result<Uint8Array, string>> => {
    let spoken = await thread.run(task.job);
    if (!spoken.ok && spoken.error.kind === "died" && open) spoken = await thread.run(task.job);
    if (!spoken.ok) return err(open ? faultSentence(spoken.error) : closed);
    const wav = trimSilence(spoken.value);
    cache.put(task.key, wav);
    return ok(wav);
  };
  const work = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    for (let task = takeNext(waiting); task !== undefined; task = takeNext(waiting)) {
      const outcome = open ? await synthesise(task) : err(closed);
      pending.delete(task.key);
      task.settle(outcome);
    }
    busy = false;
  };
  const enqueue = (key: string, job: SpeechJob, urgency: "now" | "ahead"): Promise<Result<Uint8Array, string>> => {
    const known = pending.get(key);
    if (known !== undefined) {
      if (urgency === "now") known.urgency = "now";
      return known.outcome;
    }
    if (waiting.length >= maxWaiting) return Promise.resolve(err(crowded));
    const task = newTask(key, job, urgency);
    pending.set(key, task);
    waiting.push(task);
    void work();
    return task.outcome;
  };

  return {
    warm: () => { if (open) thread.warm(); },
    speak: (text, { voice, rate, urgency = "now" }) => {
      if (!open) return Promise.resolve(err(closed));
      const job = speechJob(text, { voice, rate });
      if (!job.ok) return Promise.resolve(job);
      const key = `${voice} ${rate.toFixed(2)} ${job.value.words}`;
      const sound = cache.get(key);
      return sound === null ? enqueue(key, job.value, urgency) : Promise.resolve(ok(sound));
    },
    close: async () => {
      open = false;
      await thread.close();
    },
  };
}
