import { crc32 } from "node:zlib";
import { openPromise, type Entry, type ZipFile } from "yauzl";
import { type Archive, type ArchiveEntry, headOf } from "./archive.ts";
import { type Limits, Measure, shown } from "./limits.ts";
import { Refused } from "./refused.ts";

/** A zip, as models are mostly handed out; read by the list at its end, one file at a time. */
export function zipArchive(path: string, name: string, packedBytes: number, limits: Limits): Archive {
  const walk = (): AsyncIterable<ArchiveEntry> => walkZip(path, name, new Measure(name, packedBytes, limits));
  return { kind: "zip", name, packedBytes, walk };
}

async function* walkZip(path: string, name: string, measure: Measure): AsyncGenerator<ArchiveEntry> {
  let zip: ZipFile | null = null;
  try {
    // autoClose would close it after the last name, while that file is still being read.
    zip = await openPromise(path, { lazyEntries: true, autoClose: false });
    for await (const entry of zip.eachEntry()) yield entryOf(zip, entry, name, measure);
  } catch (problem) {
    throw faultOf(problem, name);
  } finally {
    zip?.close();
  }
}

function entryOf(zip: ZipFile, entry: Entry, archive: string, measure: Measure): ArchiveEntry {
  const path = measure.entry(entry.fileName);
  measure.unpacked(entry.uncompressedSize);
  const isFolder = entry.fileName.endsWith("/");
  if (isOther(entry, isFolder))
    throw new Refused(
      `${archive} holds a link or a device ("${shown(entry.fileName)}"), which a model has no use for. It is not to be trusted; nothing was unpacked.`,
    );
  if (entry.isEncrypted())
    throw new Refused(`${archive} is locked with a password. Unpack it yourself and give the folder.`);
  return {
    path,
    kind: isFolder ? "folder" : "file",
    bytes: entry.uncompressedSize,
    head: (most) => headOf(checked(zip, entry, archive), most),
    whole: () => checked(zip, entry, archive),
  };
}

/** The upper half of this field is the mode of a file under Unix. Source: APPNOTE.TXT 6.3.10, section 4.4.15. */
function isOther({ externalFileAttributes }: Entry, isFolder: boolean): boolean {
  const type = (externalFileAttributes >>> 16) & 0o170000;
  return type !== 0 && type !== (isFolder ? 0o040000 : 0o100000);
}

/** The library counts the bytes; their checksum is compared here. */
async function* checked(zip: ZipFile, entry: Entry, archive: string): AsyncGenerator<Buffer> {
  let sum = 0;
  try {
    for await (const part of (await zip.openReadStreamPromise(entry)) as AsyncIterable<Buffer>) {
      sum = crc32(part, sum);
      yield part;
    }
  } catch (problem) {
    throw faultOf(problem, archive);
  }
  if (sum !== entry.crc32) throw new Refused(damaged(archive));
}

const damaged = (name: string): string => `${name} is damaged: it does not unpack as a zip. Fetch it anew.`;

function faultOf(problem: unknown, name: string): unknown {
  if (problem instanceof Refused || !(problem instanceof Error)) return problem;
  const { message } = problem;
  if (/^(?:absolute path|invalid relative path|invalid characters in fileName)/.test(message))
    return new Refused(
      `${name} holds a file that would land outside its folder ("${shown(message.replace(/^[^:]*: /, ""))}"). It is not to be trusted; nothing was unpacked.`,
    );
  if (/End of central directory|unexpected EOF|overflows file bounds/.test(message))
    return new Refused(`${name} ends too early: a part of the archive is missing. Fetch it anew.`);
  if (/compression method|strong encryption|multi-disk/.test(message))
    return new Refused(
      `${name} is packed in a way that is not read here. Unpack it yourself and give the folder.`,
    );
  if (!("code" in problem) || String(problem.code).startsWith("Z_")) return new Refused(damaged(name));
  return problem;
}
