import { parentPort } from "node:worker_threads";
import { loadFlite } from "./flite.ts";
import type { FromVoice, ToVoice } from "./voice-messages.ts";

const port = parentPort;
if (port === null) throw new Error("voice-worker.ts runs only as a worker thread.");
const flite = await loadFlite();

function post(message: FromVoice, transfer: readonly ArrayBuffer[] = []): void {
  port?.postMessage(message, transfer);
}

port.on("message", ({ id, job }: ToVoice) => {
  flite(job).then(
    (wav) => {
      post({ type: "spoken", id, wav }, [wav.buffer as ArrayBuffer]);
    },
    (reason: unknown) => {
      post({ type: "failed", id, reason: String(reason) });
    },
  );
});
post({ type: "ready" });
