import { embeddedDetector } from "../../core/speech/embedded-assets.ts";
import { loadVoiceDetector } from "../../core/speech/voice-detector.ts";
import { createTurns } from "../../core/speech/turns.ts";
import { detectorAnswers, type ToDetector } from "./detector-link.ts";
import { fetched } from "./fetched.ts";
import { onnxRuntimeOf } from "./web-onnx.ts";

/**
 * The voice detector in a thread of its own. It runs all the time: where several threads share the work of a network
 * each of them goes on looking for more for a while, and with thirty looks a second that while would never end.
 */
const answers = detectorAnswers((base) =>
  loadVoiceDetector(async () => {
    const file = await fetched(base + embeddedDetector.file);
    return { runtime: onnxRuntimeOf(1), network: new Uint8Array(await file.arrayBuffer()) };
  }),
);

const inTurn = createTurns();

self.onmessage = ({ data }: MessageEvent<ToDetector>) => {
  void inTurn(async () => {
    const answer = await answers(data);
    if (answer !== null) self.postMessage(answer);
  }).catch((thrown: unknown) => reportError(thrown));
};
