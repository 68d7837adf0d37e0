import { createReadStream } from "node:fs";
import { opendir, stat } from "node:fs/promises";
import { join } from "node:path";
import { type Archive, type ArchiveEntry, headOf } from "./archive.ts";
import { type Limits, Measure, shown } from "./limits.ts";
import { Refused } from "./refused.ts";

/** A folder that somebody has unpacked; its own name is the top of every path in it. */
export function folderArchive(path: string, name: string, limits: Limits): Archive {
  // What lies in the open is as large as it is: no ratio to guard.
  const walk = (): AsyncIterable<ArchiveEntry> =>
    walkFolder(path, name, name, new Measure(name, Infinity, limits));
  return { kind: "folder", name, packedBytes: 0, walk };
}

async function* walkFolder(
  folder: string,
  inside: string,
  archive: string,
  measure: Measure,
): AsyncGenerator<ArchiveEntry> {
  for await (const item of await opendir(folder)) {
    const file = join(folder, item.name);
    const path = measure.entry(`${inside}/${item.name}`);
    if (item.isDirectory()) {
      yield* walkFolder(file, path, archive, measure);
    } else if (item.isFile()) {
      const { size } = await stat(file);
      measure.unpacked(size);
      yield {
        path,
        kind: "file",
        bytes: size,
        head: (most) => headOf(contentOf(file), most),
        whole: () => contentOf(file),
      };
    } else {
      throw new Refused(
        `${archive} holds a link or a device ("${shown(item.name)}"). Put the file itself in its place.`,
      );
    }
  }
}

const contentOf = (file: string): AsyncIterable<Buffer> => createReadStream(file) as AsyncIterable<Buffer>;
