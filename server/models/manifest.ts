import { readFile } from "node:fs/promises";
import { z } from "zod";

/** What is written where nobody said under which terms the model may be used. */
export const notStated = "not stated";

/** What NAME.json says about NAME.tar.gz. */
export interface Manifest {
  /** The terms that its maker gives, in the cook's words, or "not stated". */
  readonly licence: string;
  /** Of the packed archive, 64 hexadecimal digits. */
  readonly sha256: string;
  readonly sampleRateHz: number;
  /** Where it came from: an address, or the name of a file or folder. */
  readonly source: string;
}

const shape = z.object({
  licence: z.string(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  sampleRateHz: z.number().positive(),
  source: z.string(),
});

/** Reads a manifest; null where there is none, "unreadable" where it is something else. */
export async function readManifest(path: string): Promise<Manifest | null | "unreadable"> {
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null) return null;
  try {
    return shape.parse(JSON.parse(text));
  } catch {
    return "unreadable";
  }
}

/** The same as text, for people as well. */
export const manifestText = (manifest: Manifest): string => `${JSON.stringify(manifest, null, 2)}\n`;
