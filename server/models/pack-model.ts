import { createHash } from "node:crypto";
import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { Transform, type Writable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createGzip } from "node:zlib";
import { pack, type Pack } from "tar-stream";
import type { Archive, ArchiveEntry } from "./archive.ts";
import { isLitter, type FoundModel } from "./survey.ts";

/** What a packed model came to. */
export interface PackedModel {
  readonly sha256: string;
  readonly bytes: number;
}

/** Where the packed bytes go; a test gives one that is full. */
export type OpenTarget = (path: string) => Writable;

const usualTarget: OpenTarget = (path) => createWriteStream(path, { flags: "wx", flush: true });

/** The same model packed twice is the same bytes, so that a browser knows it again. */
const noTime = new Date(0);

/**
 * Packs the model that was found as the engine wants it: a tar.gz with one top folder. Nothing but a few pieces of it
 * is ever in memory.
 * @param name of the top folder
 * @param target a file that is not there yet; what was written of it stays when this throws
 */
export async function packModel(
  archive: Archive,
  model: FoundModel,
  name: string,
  target: string,
  signal: AbortSignal,
  openTarget: OpenTarget = usualTarget,
): Promise<PackedModel> {
  const packing = pack();
  const hash = createHash("sha256");
  let bytes = 0;
  const watch = new Transform({
    transform(part: Buffer, _encoding, done) {
      hash.update(part);
      bytes += part.length;
      done(null, part);
    },
  });
  const writing = pipeline(packing, createGzip(), watch, openTarget(target), { signal });
  // Waiting for room in what has broken would have no end.
  const broken = new AbortController();
  writing.catch(() => broken.abort());
  const feeding = feed(packing, archive, model, name, broken.signal).catch((problem: unknown) => {
    packing.destroy(problem as Error);
    throw problem;
  });
  const [written, fed] = await Promise.allSettled([writing, feeding]);
  // Either stops the other, and writing knows the reason of both.
  if (written.status === "rejected") throw written.reason;
  if (fed.status === "rejected") throw fed.reason;
  return { sha256: hash.digest("hex"), bytes };
}

/** @param broken aborts when what is fed goes nowhere any more */
async function feed(
  packing: Pack,
  archive: Archive,
  model: FoundModel,
  name: string,
  broken: AbortSignal,
): Promise<void> {
  const folders = new Set<string>();
  const prefix = model.root === "" ? "" : `${model.root}/`;
  for await (const entry of archive.walk()) {
    if (entry.kind !== "file" || isLitter(entry.path) || !entry.path.startsWith(prefix)) continue;
    const path = `${name}/${entry.path.slice(prefix.length)}`;
    for (const folder of foldersOf(path)) {
      if (folders.has(folder)) continue;
      folders.add(folder);
      packing.entry({ name: folder, type: "directory", mode: 0o755, mtime: noTime });
    }
    await feedFile(packing, entry, path, broken);
  }
  packing.finalize();
}

async function feedFile(
  packing: Pack,
  entry: ArchiveEntry,
  path: string,
  broken: AbortSignal,
): Promise<void> {
  const header = { name: path, size: entry.bytes, mode: 0o644, mtime: noTime };
  let resolve: () => void = () => undefined;
  let reject: (problem: unknown) => void = () => undefined;
  const taken = new Promise<void>((...ends) => ([resolve, reject] = ends));
  const place = packing.entry(header, (problem) => (problem ? reject(problem) : resolve()));
  // What breaks is told to the writing end as well, which knows the reason.
  place.on("error", reject);
  const giveUp = (): void => reject(broken.reason as Error);
  broken.addEventListener("abort", giveUp);
  try {
    await Promise.all([taken, fill(place, entry.whole(), broken)]);
  } finally {
    broken.removeEventListener("abort", giveUp);
  }
}

async function fill(place: Writable, content: AsyncIterable<Buffer>, broken: AbortSignal): Promise<void> {
  for await (const part of content) {
    if (!place.write(part)) await once(place, "drain", { signal: broken });
  }
  place.end();
}

/** "a/b/c.txt": "a", "a/b". */
function foldersOf(path: string): readonly string[] {
  const parts = path.split("/").slice(0, -1);
  return parts.map((_part, index) => parts.slice(0, index + 1).join("/"));
}
