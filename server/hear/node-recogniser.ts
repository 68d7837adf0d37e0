import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { createEmbeddedEar } from "../../core/speech/embedded-ear.ts";
import { createEmbeddedRecogniser, type EmbeddedEngine } from "../../core/speech/embedded-recogniser.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";
import type { WordEngine } from "../../core/speech/word-engine.ts";
import { createNodeTranscriber } from "./node-transcriber.ts";

type CreateEngine = (options: { readonly modelBase: string }) => Promise<EmbeddedEngine>;

/** The embedded recogniser for Node, of two ears. Its models are read from disk when `load` is called. */
export function createNodeRecogniser(): Recogniser {
  return createEmbeddedEar({
    quick: createNodeTranscriber("quick"),
    careful: createNodeTranscriber("careful"),
    engine: createNodeEngine(),
    breathe: () => Promise.resolve(),
  });
}

/** The light one of the two, which follows the sound. It is read from disk when `load` is called, not before. */
export function createNodeEngine(): WordEngine {
  return createEmbeddedRecogniser(async () => {
    const folder = dirname(createRequire(import.meta.url).resolve("soundswallower"));
    const imported = (await import(pathToFileURL(join(folder, "soundswallower.node.js")).href)) as {
      default: CreateEngine;
    };
    return imported.default({ modelBase: join(folder, "model/") });
  });
}
