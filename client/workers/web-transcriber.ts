import { embeddedTranscriber } from "../../core/speech/embedded-assets.ts";
import { createOnnxTranscriber } from "../../core/speech/transcribe/onnx-transcriber.ts";
import type { Tokens, Transcriber } from "../../core/speech/transcribe/transcriber.ts";
import { fetched } from "./fetched.ts";
import { onnxRuntime } from "./web-onnx.ts";

/**
 * The embedded transcriber for a worker of the page.
 * @param base where our server serves the embedded recogniser from; ends with a slash
 */
export function createWebTranscriber(base: string): Transcriber {
  return createOnnxTranscriber(async () => {
    const { encoder, decoder, tokens, path } = embeddedTranscriber;
    const [read, write, written] = await Promise.all([
      fetched(base + path + encoder),
      fetched(base + path + decoder),
      fetched(base + path + tokens),
    ]);
    return {
      runtime: onnxRuntime,
      encoder: new Uint8Array(await read.arrayBuffer()),
      decoder: new Uint8Array(await write.arrayBuffer()),
      tokens: (await written.json()) as Tokens,
    };
  });
}
