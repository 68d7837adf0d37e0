import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import type { EngineLink, FromEngine } from "./engine.ts";

/** Where our server serves the frame from, under a policy of its own. */
const frameAddress = "/vosk-frame.html";

/** The frame says that it begins as soon as its script runs. */
const startLimitMs = 20_000;

/**
 * Runs the Vosk engine in a frame of its own: it makes code from text, which this page's policy forbids and goes on
 * forbidding. The frame is loaded anew each time, so that nothing of the engine outlives its link.
 */
export async function openVosk(
  modelUrl: string,
  onMessage: (message: FromEngine) => void,
): Promise<EngineLink> {
  const frame = document.createElement("iframe");
  frame.hidden = true;
  frame.src = frameAddress;
  const loaded = new Promise((resolve) => frame.addEventListener("load", resolve, { once: true }));
  document.body.append(frame);
  await loaded;
  const { port1, port2 } = new MessageChannel();
  const limit = setTimeout(
    () =>
      onMessage({ kind: "failed", sentence: "The Vosk engine cannot be used (its frame did not start)." }),
    startLimitMs,
  );
  port1.onmessage = (event: MessageEvent<FromEngine>) => {
    clearTimeout(limit);
    onMessage(event.data);
  };
  frame.contentWindow?.postMessage("listen", location.origin, [port2]);
  port1.postMessage({ kind: "load", base: modelUrl } satisfies ToRecogniser);
  return {
    post: (message, transfer) => port1.postMessage(message, [...transfer]),
    close: () => {
      clearTimeout(limit);
      port1.close();
      frame.remove();
    },
  };
}
