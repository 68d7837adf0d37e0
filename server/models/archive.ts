/** One file or folder of an archive. It must be used before the next one is asked for. */
export interface ArchiveEntry {
  /** Checked: relative, parts joined by "/", no ".." among them, no slash at the end. */
  readonly path: string;
  readonly kind: "file" | "folder";
  /** Unpacked. */
  readonly bytes: number;
  /** The first bytes, fewer where the file is shorter. */
  readonly head: (most: number) => Promise<Buffer>;
  /** The whole; throws where it is cut short or damaged. */
  readonly whole: () => AsyncIterable<Buffer>;
}

/** A model as somebody hands it out. */
export interface Archive {
  readonly kind: "zip" | "tar.gz" | "folder";
  /** As a person would call it: the last part of its path or address. */
  readonly name: string;
  /** What its entries lie in: their bytes on disk. */
  readonly packedBytes: number;
  /** Walks it from its beginning, however often. Throws Refused where it is damaged, hostile or too large. */
  readonly walk: () => AsyncIterable<ArchiveEntry>;
}

/** Bytes as a person reads them: "41.0 MB", "12 kB". */
export function megabytes(bytes: number): string {
  if (bytes < 100_000) return `${Math.ceil(bytes / 1000)} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** The first bytes of a stream, which is given up after them. */
export async function headOf(stream: AsyncIterable<Buffer>, most: number): Promise<Buffer> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of stream) {
    parts.push(part);
    length += part.length;
    if (length >= most) break;
  }
  return Buffer.concat(parts).subarray(0, most);
}
