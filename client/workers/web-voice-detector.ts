import type { VoiceDetector } from "../../core/speech/voice-detector.ts";
import { remoteDetector } from "./detector-link.ts";

/**
 * Loads the voice detector for a worker of the page; null where it cannot be had.
 * @param base where our server serves the embedded recogniser from; ends with a slash
 */
export async function loadWebVoiceDetector(base: string): Promise<VoiceDetector | null> {
  try {
    const thread = new Worker(new URL("./detector-worker.ts", import.meta.url), {
      type: "module",
      name: "detector",
    });
    return await remoteDetector(thread, base);
  } catch {
    return null; // not every browser lets a worker have one of its own
  }
}
