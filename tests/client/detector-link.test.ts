import { describe, expect, it } from "vitest";
import {
  detectorAnswers,
  type DetectorThread,
  type FromDetector,
  remoteDetector,
} from "../../client/workers/detector-link.ts";
import type { VoiceDetector } from "../../core/speech/voice-detector.ts";

/** A thread that answers by the other end of the link, as a worker does; it may break. */
function thread(detector: VoiceDetector | null) {
  const answers = detectorAnswers(() => Promise.resolve(detector));
  const seen = { told: new Array<string>(), isEnded: false };
  const worker: DetectorThread = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => {
      seen.told.push(message.kind);
      answers(message).then(
        (answer) => {
          if (answer !== null) worker.onmessage?.({ data: answer } as MessageEvent<FromDetector>);
        },
        (why: unknown) => break_(worker, String(why)),
      );
    },
    terminate: () => {
      seen.isEnded = true;
    },
  };
  return { worker, seen };
}

const break_ = (worker: DetectorThread, message: string): void => worker.onerror?.({ message } as ErrorEvent);

/** Hears a voice wherever a sample is loud, until it forgets. */
function loud(): VoiceDetector {
  let heard = 0;
  return {
    hear: (frame) => {
      heard += frame.some((sample) => sample > 0.5) ? 1 : 0;
      return Promise.resolve(heard);
    },
    forget: () => {
      heard = 0;
    },
    free: () => Promise.resolve(),
  };
}

describe("a voice detector in a thread of its own", () => {
  it("[V66] hears frame by frame, and forgets between them", async () => {
    const { worker, seen } = thread(loud());
    const detector = await remoteDetector(worker, "base/");
    expect(await detector?.hear(Float32Array.of(0, 0.9))).toBe(1);
    expect(await detector?.hear(Float32Array.of(0.8, 0))).toBe(2);
    detector?.forget();
    expect(await detector?.hear(Float32Array.of(0, 0))).toBe(0);
    await detector?.free();
    expect(seen).toEqual({ told: ["load", "hear", "hear", "forget", "hear"], isEnded: true });
  });

  it("[V66] that cannot be had there is none, and its thread ends", async () => {
    const { worker, seen } = thread(null);
    expect(await remoteDetector(worker, "base/")).toBeNull();
    expect(seen.isEnded).toBe(true);
  });

  it("[V66] whose script cannot be loaded is none", async () => {
    const { worker } = thread(loud());
    const broken: DetectorThread = { ...worker, postMessage: () => undefined };
    const opened = remoteDetector(broken, "base/");
    break_(broken, "");
    expect(await opened).toBeNull();
  });

  it("[V66] that breaks later says so, whenever it is asked, and nobody waits for ever", async () => {
    const { worker } = thread(loud());
    const detector = await remoteDetector(worker, "base/");
    break_(worker, "out of memory");
    await expect(detector?.hear(Float32Array.of(0))).rejects.toThrow("out of memory");
    const during = thread({ ...loud(), hear: () => new Promise(() => undefined) });
    const other = await remoteDetector(during.worker, "base/");
    const asked = other?.hear(Float32Array.of(0));
    break_(during.worker, "");
    await expect(asked).rejects.toThrow("its voice detector could not be loaded");
  });
});
