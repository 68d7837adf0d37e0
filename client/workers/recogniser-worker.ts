import createEngine from "soundswallower";
import {
  createEmbeddedRecogniser,
  decoderConfig,
  type EmbeddedDecoder,
} from "../../core/speech/embedded-recogniser.ts";
import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createRecogniserPump } from "./recogniser-pump.ts";

/** The part of the engine's module that is used; its own types ask for names of another compiler. */
type Engine = { readonly Decoder: new (config: Record<string, unknown>) => EmbeddedDecoder };
type EngineOptions = { readonly modelBase: string; readonly locateFile: (name: string) => string };

const createTypedEngine = createEngine as unknown as (options: EngineOptions) => Promise<Engine>;

const take = createRecogniserPump({
  createRecogniser: (base) =>
    createEmbeddedRecogniser(async () => {
      const engine = await createTypedEngine({
        modelBase: `${base}model/`,
        locateFile: (name) => `${base}${name}`,
      });
      return new engine.Decoder({ ...decoderConfig });
    }),
  post: (message) => self.postMessage(message),
});

self.onmessage = (event: MessageEvent<ToRecogniser>) => take(event.data);
