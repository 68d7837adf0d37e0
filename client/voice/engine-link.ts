import { embeddedBase } from "../../core/speech/embedded-assets.ts";
import type { FromRecogniser, ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import type { EngineChoice, EngineLink, FromEngine } from "./engine.ts";

/**
 * Starts the engine chosen; the Vosk engine's code is fetched only when it is, and where its model cannot be used the
 * embedded engine takes over.
 */
export async function openEngine(
  choice: EngineChoice,
  onMessage: (message: FromEngine) => void,
): Promise<EngineLink> {
  if (choice.kind === "embedded") return openEmbedded(onMessage);
  const [{ openVosk }, { openWithSpare }] = await Promise.all([
    import("./vosk-link.ts"),
    import("./take-over.ts"),
  ]);
  return openWithSpare((tell) => openVosk(choice.modelUrl, tell), openEmbedded, onMessage);
}

function openEmbedded(onMessage: (message: FromRecogniser) => void): EngineLink {
  const worker = new Worker(new URL("../workers/recogniser-worker.ts", import.meta.url), {
    type: "module",
    name: "recogniser",
  });
  worker.onmessage = (event: MessageEvent<FromRecogniser>) => onMessage(event.data);
  const fail = (detail: string): void =>
    onMessage({
      kind: "failed",
      sentence: `The speech recogniser stopped (${detail}). Turn listening on again, or type and tap.`,
    });
  worker.onerror = (event) => fail(event.message || "its script could not be loaded");
  worker.onmessageerror = () => fail("a message could not be read");
  worker.postMessage({
    kind: "load",
    base: new URL(embeddedBase, location.href).href,
  } satisfies ToRecogniser);
  return {
    post: (message, transfer) => worker.postMessage(message, [...transfer]),
    // The engine's memory goes with the worker; nothing is left to free.
    close: () => worker.terminate(),
  };
}
