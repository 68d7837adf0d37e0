import type { Worker } from "node:worker_threads";
import { err, ok, type Result } from "../../core/units/result.ts";
import { trimSilence } from "../../core/sound/trim-silence.ts";
import { speechCache, type SpeechCache } from "./speech-cache.ts";
import { speechJob, type SpeechJob, type VoiceName } from "./speech-request.ts";
import { voiceThread, type VoiceFault, type VoiceThread } from "./voice-thread.ts";

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
    case "refused":
      return "The voice could not speak this text; word it differently.";
    case "died":
      return "The voice stopped working in the middle of the sentence; it is started again, so try once more.";
    case "slow":
      return "The voice took too long for this sentence; try again, or shorten it.";
  }
}

function newTask(key: string, job: SpeechJob, urgency: "now" | "ahead"): Task {
  let settle: Task["settle"] = () => {
    throw new Error("A task was settled before it was made.");
  };
  const outcome = new Promise<Result<Uint8Array, string>>((resolve) => {
    settle = resolve;
  });
  return { key, job, urgency, outcome, settle };
}

/** The order of work: what somebody waits for, then what is fetched ahead; in each the oldest first. */
function takeNext(waiting: Task[]): Task | undefined {
  const urgent = waiting.findIndex((task) => task.urgency === "now");
  return waiting.splice(Math.max(0, urgent), 1)[0];
}

class BundledVoice implements Voice {
  readonly #cache: SpeechCache;
  readonly #thread: VoiceThread;
  readonly #maxWaiting: number;
  readonly #pending = new Map<string, Task>();
  readonly #waiting: Task[] = [];
  #busy = false;
  #open = true;

  constructor(options: VoiceOptions) {
    this.#cache = speechCache({
      maxEntries: options.maxEntries ?? 400,
      maxBytes: options.maxBytes ?? 48 * 2 ** 20,
    });
    this.#thread = voiceThread(
      { startMs: options.startMs ?? 20_000, sentenceMs: options.sentenceMs ?? 8_000 },
      options.startWorker,
    );
    this.#maxWaiting = options.maxWaiting ?? 128;
  }

  speak(text: string, { voice, rate, urgency = "now" }: SpeakOptions): Promise<Result<Uint8Array, string>> {
    if (!this.#open) return Promise.resolve(err(closed));
    const job = speechJob(text, { voice, rate });
    if (!job.ok) return Promise.resolve(job);
    const key = `${voice} ${rate.toFixed(2)} ${job.value.words}`;
    const sound = this.#cache.get(key);
    return sound === null ? this.#enqueue(key, job.value, urgency) : Promise.resolve(ok(sound));
  }

  warm(): void {
    if (this.#open) this.#thread.warm();
  }

  async close(): Promise<void> {
    this.#open = false;
    await this.#thread.close();
  }

  #enqueue(key: string, job: SpeechJob, urgency: "now" | "ahead"): Promise<Result<Uint8Array, string>> {
    const known = this.#pending.get(key);
    if (known !== undefined) {
      if (urgency === "now") known.urgency = "now";
      return known.outcome;
    }
    if (this.#waiting.length >= this.#maxWaiting) return Promise.resolve(err(crowded));
    const task = newTask(key, job, urgency);
    this.#pending.set(key, task);
    this.#waiting.push(task);
    void this.#work();
    return task.outcome;
  }

  async #work(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    for (let task = takeNext(this.#waiting); task !== undefined; task = takeNext(this.#waiting)) {
      const outcome = this.#open ? await this.#synthesise(task) : err(closed);
      this.#pending.delete(task.key);
      task.settle(outcome);
    }
    this.#busy = false;
  }

  async #synthesise(task: Task): Promise<Result<Uint8Array, string>> {
    let spoken = await this.#thread.run(task.job);
    if (!spoken.ok && spoken.error.kind === "died" && this.#open) spoken = await this.#thread.run(task.job);
    if (!spoken.ok) return err(this.#open ? faultSentence(spoken.error) : closed);
    const wav = trimSilence(spoken.value);
    this.#cache.put(task.key, wav);
    return ok(wav);
  }
}

/**
 * Starts nothing until the first sentence (or `warm`). One sentence is synthesised at a time; the same sentence asked
 * for twice is synthesised once; a thread that dies is started again and the sentence tried once more.
 */
export function createVoice(options: VoiceOptions = {}): Voice {
  return new BundledVoice(options);
}
