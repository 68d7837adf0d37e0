import { open, stat } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { type Archive, megabytes } from "./archive.ts";
import { type Limits, usualLimits } from "./limits.ts";
import { folderArchive } from "./read-folder.ts";
import { tarArchive } from "./read-tar.ts";
import { zipArchive } from "./read-zip.ts";
import { Refused } from "./refused.ts";

/** What else people find in the place of a model, by its first bytes. */
const others: readonly (readonly [start: RegExp, what: string])[] = [
  [/^\s*<(?:!doctype|html|\?xml)/i, "a web page"],
  [/^version https:\/\/git-lfs/, "a note that stands for a large file kept elsewhere"],
  [/^7z\xbc\xaf/, "packed as 7z"],
  [/^Rar!/, "packed as rar"],
  [/^\xfd7zXZ/, "packed as xz"],
  [/^BZh/, "packed as bzip2"],
  [/^\x28\xb5\x2f\xfd/, "packed as zstd"],
];

/**
 * A file or a folder as an archive that can be walked.
 * @param path of the file or folder
 * @param name what to call it in messages; the last part of the path unless given
 * Throws Refused where it is neither a zip nor a tar.gz nor a folder, and what the disk throws.
 */
export async function openArchive(
  path: string,
  name = basename(resolve(path)),
  limits: Limits = usualLimits,
): Promise<Archive> {
  const { size, ...found } = await statOf(path, name);
  if (found.isFolder) return folderArchive(path, name, limits);
  if (size === 0) throw new Refused(`${name} is empty. Fetch it anew.`);
  if (size > limits.packedBytes)
    throw new Refused(
      `${name} has more than ${megabytes(limits.packedBytes)}, too much for the engine. Take a smaller model.`,
    );
  const start = await firstBytes(path);
  if (/^PK(?:\x03\x04|\x05\x06)/.test(start)) return zipArchive(path, name, size, limits);
  if (/^\x1f\x8b/.test(start)) return tarArchive(path, name, size, limits);
  const what = others.find(([pattern]) => pattern.test(start))?.[1];
  throw new Refused(
    what === undefined
      ? `${name} is not an archive. Give a zip, a tar.gz or a folder.`
      : `${name} is ${what}, not a zip or a tar.gz. ${/packed/.test(what) ? "Unpack it yourself and give the folder." : "Look for the address of the archive itself."}`,
  );
}

async function statOf(
  path: string,
  name: string,
): Promise<{ readonly size: number; readonly isFolder: boolean }> {
  const found = await stat(path).catch(() => null);
  if (found === null) throw new Refused(`There is no file or folder ${name}. Check its name.`);
  if (!found.isDirectory() && !found.isFile()) throw new Refused(`${name} is neither a file nor a folder.`);
  return { size: found.size, isFolder: found.isDirectory() };
}

/** One letter a byte. */
async function firstBytes(path: string): Promise<string> {
  const file = await open(path, "r");
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(512), 0, 512, 0);
    return buffer.subarray(0, bytesRead).toString("latin1");
  } finally {
    await file.close();
  }
}
