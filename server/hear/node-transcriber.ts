import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { embeddedTranscribers, type TranscriberSize } from "../../core/speech/embedded-assets.ts";
import { createOnnxTranscriber } from "../../core/speech/transcribe/onnx-transcriber.ts";
import type { Transcriber } from "../../core/speech/transcribe/transcriber.ts";
import { transcriberFolder, transcriberTokens } from "./network-files.ts";
import { onnxRuntime } from "./node-onnx.ts";

/** An embedded transcriber for Node. Its networks are read from disk when `load` is called, not before. */
export function createNodeTranscriber(size: TranscriberSize): Transcriber {
  return createOnnxTranscriber(async () => {
    const folder = transcriberFolder(size);
    const [encoder, decoder] = await Promise.all(
      [embeddedTranscribers.encoder, embeddedTranscribers.decoder].map((name) =>
        readFile(join(folder, name)),
      ),
    );
    if (encoder === undefined || decoder === undefined) throw new Error("a network was not read");
    return { runtime: onnxRuntime, tokens: await transcriberTokens(), encoder, decoder };
  });
}
