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

/**
 * @param limits.startMs time to load the synthesiser, @param limits.sentenceMs time for one sentence
 * @param startWorker injectable, so that a test can end the thread in mid-sentence
 */
export function voiceThread(
  limits: { readonly startMs: number; readonly sentenceMs: number },
  startWorker: () => Worker = startVoiceWorker,
): VoiceThread {
  let worker: Worker | null = null;
  let ready = false;
  let waiting: Waiting | null = null;
  let lastId = 0;

  const settle = (outcome: Result<Uint8Array, VoiceFault>): void => {
    const done = waiting;
    waiting = null;
    done?.settle(outcome);
  };
  const lost = (which: Worker, reason: string): void => {
    if (which !== worker) return;
    worker = null;
    settle(err({ kind: "died", reason }));
  };
  const hear = (which: Worker, message: FromVoice): void => {
    if (which !== worker) return;
    if (message.type === "ready") ready = true;
    else if (message.id !== waiting?.id) return;
    else if (message.type === "spoken") settle(ok(message.wav));
    else settle(err({ kind: "refused", reason: message.reason }));
  };
  const started = (): Worker => {
    if (worker !== null) return worker;
    const next = startWorker();
    ready = false;
    worker = next;
    next.on("message", (message: FromVoice) => { hear(next, message); });
    next.on("error", (error) => { lost(next, String(error)); });
    next.on("exit", (code) => { lost(next, `the thread ended with code ${code}`); });
    // A voice that nobody uses must not keep the server's process alive.
    next.unref();
    return next;
  };
  const giveUp = (limitMs: number): void => {
    const slow = worker;
    worker = null;
    void slow?.terminate();
    settle(err({ kind: "slow", reason: `nothing came within ${limitMs} ms` }));
  };

  return {
    warm: () => { started(); },
    run: (job) =>
      new Promise((resolve) => {
        const thread = started();
        const limitMs = limits.sentenceMs + (ready ? 0 : limits.startMs);
        lastId += 1;
        const timer = setTimeout(() => { giveUp(limitMs); }, limitMs);
        waiting = { id: lastId, settle: (outcome) => { clearTimeout(timer); resolve(outcome); } };
        thread.postMessage({ id: lastId, job } satisfies ToVoice);
      }),
    close: async () => {
      const open = worker;
      worker = null;
      settle(err({ kind: "died", reason: "the voice was closed" }));
      await open?.terminate();
    },
  };
}
