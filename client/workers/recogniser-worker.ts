import createEngine from "soundswallower";
import { createEmbeddedRecogniser, type EmbeddedEngine } from "../../core/speech/embedded-recogniser.ts";
import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createRecogniserPump } from "./recogniser-pump.ts";

type EngineOptions = { readonly modelBase: string; readonly locateFile: (name: string) => string };

/** The engine's own types ask for names of another compiler; only the part that is used is named. */
const createTypedEngine = createEngine as unknown as (options: EngineOptions) => Promise<EmbeddedEngine>;

const take = createRecogniserPump({
  createRecogniser: (base) =>
    createEmbeddedRecogniser(() =>
      createTypedEngine({ modelBase: `${base}model/`, locateFile: (name) => `${base}${name}` }),
    ),
  post: (message) => self.postMessage(message),
});

self.onmessage = (event: MessageEvent<ToRecogniser>) => take(event.data);
