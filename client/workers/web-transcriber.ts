import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { embeddedTranscriber } from "../../core/speech/embedded-assets.ts";
import { createOnnxTranscriber, type OnnxRuntime } from "../../core/speech/transcribe/onnx-transcriber.ts";
import type { Tokens, Transcriber } from "../../core/speech/transcribe/transcriber.ts";

/** The runtime's own types name more kinds of tensors than the two networks use. */
const runtime = { InferenceSession, Tensor } as unknown as OnnxRuntime;

/**
 * The embedded transcriber for a worker of the page.
 * @param base where our server serves the embedded recogniser from; ends with a slash
 */
export function createWebTranscriber(base: string): Transcriber {
  return createOnnxTranscriber(async () => {
    // More threads would need a page that is isolated from all others, and gain little for so small a model.
    env.wasm.numThreads = 1;
    const { encoder, decoder, tokens, path } = embeddedTranscriber;
    const [read, write, written] = await Promise.all([
      fetched(base + path + encoder),
      fetched(base + path + decoder),
      fetched(base + path + tokens),
    ]);
    return {
      runtime,
      encoder: new Uint8Array(await read.arrayBuffer()),
      decoder: new Uint8Array(await write.arrayBuffer()),
      tokens: (await written.json()) as Tokens,
    };
  });
}

async function fetched(address: string): Promise<Response> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  return response;
}
