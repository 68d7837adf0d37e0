import { readFile, stat } from "node:fs/promises";
import { extname } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

export type Packing = "br" | "gzip" | "identity";

/** Files that get smaller; pictures and sound are packed already. */
const worthPacking: ReadonlySet<string> = new Set([
  ".html",
  ".js",
  ".css",
  ".svg",
  ".json",
  ".wasm",
  ".txt",
  ".webmanifest",
]);
/** Below this the headers weigh more than what is saved. */
const smallestBytes = 1024;
/** Above this packing takes longer than sending it through a house does: 14 MB took brotli seven seconds. */
const largestBytes = 4_000_000;
/** 9 of 11: a tenth larger than the best, in a twentieth of the time. */
const brotliQuality = 9;

const toBrotli = promisify(brotliCompress);
const toGzip = promisify(gzip);

interface Kept {
  readonly tag: string;
  readonly bodies: Map<Packing, Promise<Buffer>>;
}

/** The bytes to send, and a tag that changes with them. */
export interface PackedFile {
  readonly body: Buffer;
  readonly packing: Packing;
  /** A strong entity tag, with its quotes. */
  readonly tag: string;
}

async function pack(path: string, packing: Packing): Promise<Buffer> {
  const bytes = await readFile(path);
  switch (packing) {
    case "br":
      return toBrotli(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: brotliQuality } });
    case "gzip":
      return toGzip(bytes, { level: 9 });
    case "identity":
      return bytes;
  }
}

/** Compresses each file once and remembers it until the file changes. For a folder of modest size. */
export class FilePacker {
  readonly #kept = new Map<string, Kept>();

  /**
   * @param wanted what the browser can unpack, the best first
   * @returns null when there is no such file
   */
  async pack(path: string, wanted: Packing): Promise<PackedFile | null> {
    const entry = await stat(path).catch(() => null);
    if (entry?.isFile() !== true) return null;
    const isWorth =
      worthPacking.has(extname(path)) && entry.size >= smallestBytes && entry.size <= largestBytes;
    const packing = isWorth ? wanted : "identity";
    const version = `${entry.mtimeMs.toString(36)}-${entry.size.toString(36)}`;
    const kept = this.#keep(path, version);
    const known = kept.bodies.get(packing) ?? pack(path, packing);
    kept.bodies.set(packing, known);
    const body = await known.catch(() => null);
    if (body !== null) return { body, packing, tag: `"${version}-${packing}"` };
    // A new build took the file away between the look and the read; the next request looks again.
    this.#kept.delete(path);
    return null;
  }

  #keep(path: string, tag: string): Kept {
    const known = this.#kept.get(path);
    if (known?.tag === tag) return known;
    const fresh: Kept = { tag, bodies: new Map() };
    this.#kept.set(path, fresh);
    return fresh;
  }
}
