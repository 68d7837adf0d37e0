import { embeddedDetector } from "../../core/speech/embedded-assets.ts";
import { loadVoiceDetector, type VoiceDetector } from "../../core/speech/voice-detector.ts";
import { fetched } from "./fetched.ts";
import { onnxRuntime } from "./web-onnx.ts";

/**
 * Loads the voice detector for a worker of the page; null where it cannot be had.
 * @param base where our server serves the embedded recogniser from; ends with a slash
 */
export function loadWebVoiceDetector(base: string): Promise<VoiceDetector | null> {
  return loadVoiceDetector(async () => {
    const file = await fetched(base + embeddedDetector.file);
    return { runtime: onnxRuntime, network: new Uint8Array(await file.arrayBuffer()) };
  });
}
