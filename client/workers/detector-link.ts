import type { VoiceDetector } from "../../core/speech/voice-detector.ts";

/** What the detector's thread is told. Every message but "forget" has one answer, and the next one waits for it. */
export type ToDetector =
  /** @param base where our server serves the embedded recogniser from; ends with a slash */
  | { readonly kind: "load"; readonly base: string }
  | { readonly kind: "hear"; readonly frame: Float32Array }
  | { readonly kind: "forget" };

export type FromDetector =
  /** Whether the network could be had. */
  { readonly kind: "loaded"; readonly isThere: boolean } | { readonly kind: "voice"; readonly voice: number };

/** The part of a worker that is used. */
export type DetectorThread = {
  onmessage: ((event: MessageEvent<FromDetector>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  readonly postMessage: (message: ToDetector) => void;
  readonly terminate: () => void;
};

/** A detector that listens in another thread; null where it cannot be had there. */
export async function remoteDetector(thread: DetectorThread, base: string): Promise<VoiceDetector | null> {
  let broken: Error | null = null;
  let waiting = {
    answer: (_message: FromDetector): void => undefined,
    fail: (_why: Error): void => undefined,
  };
  thread.onmessage = ({ data }) => waiting.answer(data);
  thread.onerror = ({ message }) => {
    broken = new Error(message || "its voice detector could not be loaded");
    waiting.fail(broken);
  };
  const ask = (message: ToDetector): Promise<FromDetector> =>
    new Promise((answer, fail) => {
      if (broken !== null) return fail(broken);
      waiting = { answer, fail };
      thread.postMessage(message);
    });
  const loaded = await ask({ kind: "load", base }).catch(() => null);
  if (loaded?.kind !== "loaded" || !loaded.isThere) {
    thread.terminate();
    return null;
  }
  return {
    hear: async (frame) => {
      const answer = await ask({ kind: "hear", frame });
      if (answer.kind !== "voice") throw new Error("its voice detector answered out of turn");
      return answer.voice;
    },
    forget: () => thread.postMessage({ kind: "forget" }),
    free: () => {
      thread.terminate();
      return Promise.resolve();
    },
  };
}

/**
 * The other end: answers what the detector's thread is told.
 * @param load loads the detector; null where it cannot be had
 */
export function detectorAnswers(
  load: (base: string) => Promise<VoiceDetector | null>,
): (message: ToDetector) => Promise<FromDetector | null> {
  let detector: VoiceDetector | null = null;
  return async (message) => {
    switch (message.kind) {
      case "load":
        detector = await load(message.base);
        return { kind: "loaded", isThere: detector !== null };
      case "hear":
        if (detector === null) throw new Error("its voice detector was used before it was loaded");
        return { kind: "voice", voice: await detector.hear(message.frame) };
      case "forget":
        detector?.forget();
        return null;
    }
  };
}
