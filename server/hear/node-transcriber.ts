import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { embeddedTranscriber } from "../../core/speech/embedded-assets.ts";
import { createOnnxTranscriber } from "../../core/speech/transcribe/onnx-transcriber.ts";
import type { Transcriber } from "../../core/speech/transcribe/transcriber.ts";
import { transcriberFolder, transcriberTokens } from "./network-files.ts";
import { onnxRuntime } from "./node-onnx.ts";

/** The embedded transcriber for Node. Its networks are read from disk when `load` is called, not before. */
export function createNodeTranscriber(): Transcriber {
  return createOnnxTranscriber(async () => {
    const folder = transcriberFolder();
    const [encoder, decoder] = await Promise.all(
      [embeddedTranscriber.encoder, embeddedTranscriber.decoder].map((name) => readFile(join(folder, name))),
    );
    if (encoder === undefined || decoder === undefined) throw new Error("a network was not read");
    return { runtime: onnxRuntime, tokens: await transcriberTokens(), encoder, decoder };
  });
}
