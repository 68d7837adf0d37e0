import {
  embeddedTranscribers,
  type TranscriberSize,
  transcriberPath,
} from "../../core/speech/embedded-assets.ts";
import type { OnnxRuntime } from "../../core/speech/onnx.ts";
import { createOnnxTranscriber } from "../../core/speech/transcribe/onnx-transcriber.ts";
import type { Tokens, Transcriber } from "../../core/speech/transcribe/transcriber.ts";
import { fetched } from "./fetched.ts";

/**
 * An embedded transcriber for a worker of the page.
 * @param base where our server serves the embedded recogniser from; ends with a slash
 */
export function createWebTranscriber(base: string, size: TranscriberSize, runtime: OnnxRuntime): Transcriber {
  return createOnnxTranscriber(async () => {
    const { encoder, decoder, tokens } = embeddedTranscribers;
    const path = transcriberPath(size);
    const [read, write, written] = await Promise.all([
      fetched(base + path + encoder),
      fetched(base + path + decoder),
      fetched(base + tokens),
    ]);
    return {
      runtime,
      encoder: new Uint8Array(await read.arrayBuffer()),
      decoder: new Uint8Array(await write.arrayBuffer()),
      tokens: (await written.json()) as Tokens,
    };
  });
}
