import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { createEmbeddedRecogniser, type EmbeddedEngine } from "../../core/speech/embedded-recogniser.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";

type CreateEngine = (options: { readonly modelBase: string }) => Promise<EmbeddedEngine>;

/** The folder of the embedded recogniser's package: its engine, acoustic model and dictionary. */
export function embeddedFolder(): string {
  return dirname(createRequire(import.meta.url).resolve("soundswallower"));
}

/** The embedded recogniser for Node. The engine is read from disk when `load` is called, not before. */
export function createNodeRecogniser(): Recogniser {
  return createEmbeddedRecogniser(async () => {
    const folder = embeddedFolder();
    const imported = (await import(pathToFileURL(join(folder, "soundswallower.node.js")).href)) as {
      default: CreateEngine;
    };
    return imported.default({ modelBase: join(folder, "model/") });
  });
}
