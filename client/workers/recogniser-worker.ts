import createEngine from "soundswallower";
import { createEmbeddedEar } from "../../core/speech/embedded-ear.ts";
import { createEmbeddedRecogniser, type EmbeddedEngine } from "../../core/speech/embedded-recogniser.ts";
import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createRecogniserPump } from "./recogniser-pump.ts";
import { createWebTranscriber } from "./web-transcriber.ts";
import { mostThreads, onnxRuntimeOf } from "./web-onnx.ts";
import { loadWebVoiceDetector } from "./web-voice-detector.ts";

type EngineOptions = { readonly modelBase: string; readonly locateFile: (name: string) => string };

/** The engine's own types ask for names of another compiler; only the part that is used is named. */
const createTypedEngine = createEngine as unknown as (options: EngineOptions) => Promise<EmbeddedEngine>;

/**
 * No address at all: fetching it fails at once, without a request. The engine looks for a feature transform, which
 * this model does not have and which it does without, whenever it begins and after every sentence; asking the server
 * put an error into the console each time. An empty file would not do: the engine takes it for a broken transform.
 */
const nowhere = "//";

async function loadEngine(base: string): Promise<EmbeddedEngine> {
  const engine = await createTypedEngine({
    modelBase: `${base}model/`,
    locateFile: (name) => `${base}${name}`,
  });
  class Decoder extends engine.Decoder {
    constructor(config: Record<string, unknown>) {
      super({ ...config, lda: nowhere });
    }
  }
  // The engine's views of its memory change as it grows, so it is looked through and not copied.
  return Object.create(engine, { Decoder: { value: Decoder } }) as EmbeddedEngine;
}

/** A turn for the messages that wait; a timer would take four milliseconds. */
const turns = new MessageChannel();
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    turns.port1.onmessage = () => resolve();
    turns.port2.postMessage(null);
  });

const listen = (): void => {
  const runtime = onnxRuntimeOf(mostThreads);
  const take = createRecogniserPump({
    createRecogniser: (base) =>
      createEmbeddedEar({
        quick: createWebTranscriber(base, "quick", runtime),
        careful: createWebTranscriber(base, "careful", runtime),
        engine: createEmbeddedRecogniser(() => loadEngine(base)),
        breathe,
      }),
    loadDetector: loadWebVoiceDetector,
    post: (message, transfer) => self.postMessage(message, { transfer: [...transfer] }),
  });
  self.onmessage = (event: MessageEvent<ToRecogniser>) => take(event.data);
};

// The runtime's threads are workers of this same file, which know themselves by their name.
if (!self.name.startsWith("em-pthread")) listen();
