import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import {
  embeddedDetector,
  embeddedTranscribers,
  type TranscriberSize,
} from "../../core/speech/embedded-assets.ts";
import type { Tokens } from "../../core/speech/transcribe/transcriber.ts";

/** The folder that the two networks of an embedded transcriber lie in. */
export function transcriberFolder(size: TranscriberSize): string {
  return join(folderOfEntry(embeddedTranscribers.package), embeddedTranscribers.folders[size]);
}

/** The folder that the network of the voice detector lies in. */
export function detectorFolder(): string {
  return folderOfEntry(embeddedDetector.package);
}

const folderOfEntry = (name: string): string => dirname(fileURLToPath(import.meta.resolve(name)));

/** The tokens that both write in; reading them takes a tenth of a second. */
export async function transcriberTokens(): Promise<Tokens> {
  const { default: tokenizer } = await import("llama-tokenizer-js");
  return { texts: tokenizer.vocabById, first: 1, last: 2 };
}
