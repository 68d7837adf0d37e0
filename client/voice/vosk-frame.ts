import { createJudgingRecogniser } from "../../core/speech/judging-recogniser.ts";
import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createRecogniserPump } from "../workers/recogniser-pump.ts";
import type { FromEngine } from "./engine.ts";
import { createVoskRecogniser, voskAcceptance } from "./vosk-recogniser.ts";

// The page that embeds this hands over one port, and everything goes through that.
window.addEventListener("message", (event) => {
  const [port] = event.ports;
  if (event.origin !== location.origin || event.source !== window.parent || port === undefined) return;
  const post = (message: FromEngine, transfer: readonly ArrayBuffer[] = []): void =>
    port.postMessage(message, [...transfer]);
  const take = createRecogniserPump({
    createRecogniser: (base) =>
      createJudgingRecogniser(
        createVoskRecogniser(base, (loading) => post({ kind: "loading", loading })),
        voskAcceptance,
      ),
    // The frame is cut off from all but the one model that the cook chose.
    loadDetector: () => Promise.resolve(null),
    post,
  });
  port.onmessage = (sent: MessageEvent<ToRecogniser>) => take(sent.data);
});
