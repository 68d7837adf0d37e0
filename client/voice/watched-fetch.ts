import type { ModelLoading } from "./engine.ts";

/** What the engine's worker tells beside the library's own messages. */
export const loadingEvent = "stovecall-loading";

/**
 * Lets every worker that this frame makes from text tell how far a model is that it fetches: the library fetches it
 * inside its worker and says nothing before the end. It puts a few lines before the worker's own script.
 */
export function watchFetches(): void {
  const plain = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (made) => {
    if (!(made instanceof Blob) || made.type !== "application/javascript") return plain(made);
    const before = `(${tellFetched.toString()})(${JSON.stringify(loadingEvent)});\n`;
    return plain(new Blob([before, made], { type: made.type }));
  };
}

/** Runs in the worker, from its own text: it may use nothing from outside itself. */
function tellFetched(event: string): void {
  const plain = self.fetch.bind(self);
  const tell = (loading: ModelLoading): void => self.postMessage({ event, loading });
  self.fetch = async (...asked) => {
    const response = await plain(...asked);
    if (response.body === null || !response.ok || !response.url.includes("/speech/models/")) return response;
    const ofBytes = Number(response.headers.get("Content-Length")) || null;
    let bytes = 0;
    let toldAt = 0;
    const counted = new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
      transform(part, onwards) {
        bytes += part.length;
        if (performance.now() - toldAt > 100) {
          toldAt = performance.now();
          tell({ stage: "fetching", bytes, ofBytes });
        }
        onwards.enqueue(part);
      },
      flush: () => {
        tell({ stage: "fetching", bytes, ofBytes });
        tell({ stage: "unpacking" });
      },
    });
    return new Response(response.body.pipeThrough(counted), response);
  };
}
