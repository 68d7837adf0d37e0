import { promisify } from "node:util";
import { crc32 } from "node:zlib";
import yauzl from "yauzl";
import { expect } from "vitest";

/** All files of an archive, as another program reads them. */
export async function unpacked(archive: Uint8Array): Promise<ReadonlyMap<string, Buffer>> {
  const open = promisify<Buffer, yauzl.Options, yauzl.ZipFile>(yauzl.fromBuffer);
  const zip = await open(Buffer.from(archive), { lazyEntries: true });
  const files = new Map<string, Buffer>();
  return new Promise((resolve, reject) => {
    zip.on("error", reject);
    zip.on("end", () => resolve(files));
    zip.on("entry", (entry: yauzl.Entry) => {
      zip.openReadStream(entry, (error, stream) => {
        if (error !== null) return reject(error);
        const parts: Buffer[] = [];
        stream.on("data", (part: Buffer) => parts.push(part));
        stream.on("error", reject);
        stream.on("end", () => {
          const bytes = Buffer.concat(parts);
          // Source: zlib's own CRC-32, through Node.
          expect(entry.crc32).toBe(crc32(bytes));
          files.set(entry.fileName, bytes);
          zip.readEntry();
        });
      });
    });
    zip.readEntry();
  });
}
