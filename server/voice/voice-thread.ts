import { Worker } from "node:worker_threads";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { SpeechJob } from "./speech-request.ts";
import type { FromVoice, ToVoice } from "./voice-messages.ts";

/** Why a sentence was not spoken: the engine refused it, the thread died under it, or it took too long. */
export type VoiceFault = { readonly kind: "refused" | "died" | "slow"; readonly reason: string };

/** The synthesiser's thread: one sentence at a time, started when first needed and again after it has died. */
export interface VoiceThread {
  /** Starts loading the synthesiser, so that the first sentence need not wait for it. */
  readonly warm: () => void;
  /** Only when the last call has settled. */
  readonly run: (job: SpeechJob) => Promise<Result<Uint8Array, VoiceFault>>;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly id: number;
  readonly settle: (outcome: Result<Uint8Array, VoiceFault>) => void;
}

/** Starts the real thread; it loads in about half a second, and says when it is ready. */
export function startVoiceWorker(): Worker {
  return new Worker(new URL("./voice-worker-start.mjs", import.meta.url));
}

/** Time to load the synthesiser, and time for one sentence. */
export interface VoiceLimits {
  readonly startMs: number;
  readonly sentenceMs: number;
}

class Thread implements VoiceThread {
  readonly #limits: VoiceLimits;
  readonly #startWorker: () => Worker;
  #worker: Worker | null = null;
  #ready = false;
  #waiting: Waiting | null = null;
  #lastId = 0;

  constructor(limits: VoiceLimits, startWorker: () => Worker) {
    this.#limits = limits;
    this.#startWorker = startWorker;
  }

  warm(): void {
    this.#started();
  }

  run(job: SpeechJob): Promise<Result<Uint8Array, VoiceFault>> {
    return new Promise((resolve) => {
      const thread = this.#started();
      const limitMs = this.#limits.sentenceMs + (this.#ready ? 0 : this.#limits.startMs);
      const id = (this.#lastId += 1);
      const timer = setTimeout(() => {
        this.#giveUp(limitMs);
      }, limitMs);
      this.#waiting = {
        id,
        settle: (outcome) => {
          clearTimeout(timer);
          resolve(outcome);
        },
      };
      thread.postMessage({ id, job } satisfies ToVoice);
    });
  }

  async close(): Promise<void> {
    const open = this.#worker;
    this.#worker = null;
    this.#settle(err({ kind: "died", reason: "the voice was closed" }));
    await open?.terminate();
  }

  #started(): Worker {
    if (this.#worker !== null) return this.#worker;
    const next = this.#startWorker();
    this.#ready = false;
    this.#worker = next;
    next.on("message", (message: FromVoice) => {
      this.#hear(next, message);
    });
    next.on("error", (error) => {
      this.#lost(next, String(error));
    });
    next.on("exit", (code) => {
      this.#lost(next, `the thread ended with code ${code}`);
    });
    // A voice that nobody uses must not keep the server's process alive.
    next.unref();
    return next;
  }

  #hear(which: Worker, message: FromVoice): void {
    if (which !== this.#worker) return;
    if (message.type === "ready") this.#ready = true;
    else if (message.id !== this.#waiting?.id) return;
    else if (message.type === "spoken") this.#settle(ok(message.wav));
    else this.#settle(err({ kind: "refused", reason: message.reason }));
  }

  #lost(which: Worker, reason: string): void {
    if (which !== this.#worker) return;
    this.#worker = null;
    this.#settle(err({ kind: "died", reason }));
  }

  #giveUp(limitMs: number): void {
    const slow = this.#worker;
    this.#worker = null;
    void slow?.terminate();
    this.#settle(err({ kind: "slow", reason: `nothing came within ${limitMs} ms` }));
  }

  #settle(outcome: Result<Uint8Array, VoiceFault>): void {
    const done = this.#waiting;
    this.#waiting = null;
    done?.settle(outcome);
  }
}

/** @param startWorker injectable, so that a test can end the thread in mid-sentence */
export function voiceThread(limits: VoiceLimits, startWorker: () => Worker = startVoiceWorker): VoiceThread {
  return new Thread(limits, startWorker);
}
