import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { embeddedTranscriber } from "../../core/speech/embedded-assets.ts";
import { createOnnxTranscriber, type OnnxRuntime } from "../../core/speech/transcribe/onnx-transcriber.ts";
import type { Transcriber } from "../../core/speech/transcribe/transcriber.ts";
import { transcriberFolder, transcriberTokens } from "./transcriber-files.ts";

/** The runtime's own types name more kinds of tensors than the two networks use. */
const runtime = { InferenceSession, Tensor } as unknown as OnnxRuntime;

/** The embedded transcriber for Node. Its networks are read from disk when `load` is called, not before. */
export function createNodeTranscriber(): Transcriber {
  return createOnnxTranscriber(async () => {
    env.wasm.numThreads = 1;
    const folder = transcriberFolder();
    const [encoder, decoder] = await Promise.all(
      [embeddedTranscriber.encoder, embeddedTranscriber.decoder].map((name) => readFile(join(folder, name))),
    );
    if (encoder === undefined || decoder === undefined) throw new Error("a network was not read");
    return { runtime, tokens: await transcriberTokens(), encoder, decoder };
  });
}
