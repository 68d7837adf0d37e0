import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { embeddedDetector } from "../../core/speech/embedded-assets.ts";
import { loadVoiceDetector, type VoiceDetector } from "../../core/speech/voice-detector.ts";
import { detectorFolder } from "./network-files.ts";
import { onnxRuntime } from "./node-onnx.ts";

/** Loads the voice detector for Node; null where it cannot be had. */
export function loadNodeVoiceDetector(): Promise<VoiceDetector | null> {
  return loadVoiceDetector(async () => ({
    runtime: onnxRuntime,
    network: await readFile(join(detectorFolder(), embeddedDetector.file)),
  }));
}
