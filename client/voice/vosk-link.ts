import type { FromRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createRecogniserPump } from "../workers/recogniser-pump.ts";
import type { EngineLink } from "./engine.ts";
import { createVoskRecogniser, voskAcceptance } from "./vosk-recogniser.ts";

/** Runs the pump in the page: the Vosk engine brings a worker of its own. */
export function openVosk(modelUrl: string, onMessage: (message: FromRecogniser) => void): EngineLink {
  const take = createRecogniserPump({
    createRecogniser: createVoskRecogniser,
    post: onMessage,
    acceptance: voskAcceptance,
  });
  take({ kind: "load", base: modelUrl });
  return { post: (message) => take(message), close: () => take({ kind: "close" }) };
}
