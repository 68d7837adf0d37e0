import { createReadStream } from "node:fs";
import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createGunzip } from "node:zlib";
import { extract, type Entry } from "tar-stream";
import type { Archive, ArchiveEntry } from "./archive.ts";
import { type Limits, Measure, shown } from "./limits.ts";
import { Refused } from "./refused.ts";

/** A tar.gz, read as a stream from its beginning to its end. */
export function tarArchive(path: string, name: string, packedBytes: number, limits: Limits): Archive {
  const walk = (): AsyncIterable<ArchiveEntry> => walkTar(path, name, new Measure(name, packedBytes, limits));
  return { kind: "tar.gz", name, packedBytes, walk };
}

async function* walkTar(path: string, name: string, measure: Measure): AsyncGenerator<ArchiveEntry> {
  const unpacking = extract();
  const counter = new Transform({
    transform(part: Buffer, _encoding, done) {
      try {
        measure.unpacked(part.length);
        done(null, part);
      } catch (problem) {
        done(problem as Error);
      }
    },
  });
  // What stops the reading is thrown where the entries are asked for; here it would be thrown a second time.
  const reading = pipeline(createReadStream(path), createGunzip(), counter, unpacking).catch(
    (problem: unknown) => problem,
  );
  try {
    for await (const entry of unpacking) {
      yield entryOf(entry, name, measure);
      // Whatever nobody has read of it.
      if (!entry.destroyed) for await (const _part of entry);
    }
  } catch (problem) {
    throw faultOf(problem, name);
  } finally {
    unpacking.destroy();
    await reading;
  }
  const problem = await reading;
  if (problem !== undefined) throw faultOf(problem, name);
}

function entryOf(entry: Entry, archive: string, measure: Measure): ArchiveEntry {
  const { name, type, size } = entry.header;
  const path = measure.entry(name);
  if (type !== "file" && type !== "directory" && type !== "contiguous-file")
    throw new Refused(
      `${archive} holds a link or a device ("${shown(name)}"), which a model has no use for. It is not to be trusted; nothing was unpacked.`,
    );
  return {
    path,
    kind: type === "directory" ? "folder" : "file",
    bytes: size ?? 0,
    head: (most) => headAndRest(contentOf(entry, archive), most),
    whole: () => contentOf(entry, archive),
  };
}

async function* contentOf(entry: Entry, archive: string): AsyncGenerator<Buffer> {
  try {
    for await (const part of entry as AsyncIterable<Buffer>) yield part;
  } catch (problem) {
    throw faultOf(problem, archive);
  }
}

/** A tar goes on only after the whole of an entry, so the rest of it is read as well. */
async function headAndRest(content: AsyncIterable<Buffer>, most: number): Promise<Buffer> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of content) {
    if (length < most) parts.push(part);
    length += part.length;
  }
  return Buffer.concat(parts).subarray(0, most);
}

function faultOf(problem: unknown, name: string): unknown {
  if (problem instanceof Refused || !(problem instanceof Error)) return problem;
  const code = "code" in problem ? String(problem.code) : "";
  if (code === "Z_BUF_ERROR" || problem.message === "Unexpected end of data")
    return new Refused(`${name} ends too early: a part of the archive is missing. Fetch it anew.`);
  if (code.startsWith("Z_") || problem.message.startsWith("Invalid tar header"))
    return new Refused(`${name} is damaged: it does not unpack as a tar.gz. Fetch it anew.`);
  return problem;
}
