import { createHash } from "node:crypto";
import { createWriteStream } from "node:fs";
import { readFile, rm, stat, truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable, Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import { setTimeout as wait } from "node:timers/promises";
import { z } from "zod";
import { megabytes } from "./archive.ts";
import { Cut, openAddress } from "./open-address.ts";
import { Refused } from "./refused.ts";

/** What a download is done with. */
export interface FetchParts {
  /** Where the parts of it are kept, under hidden names. */
  readonly folder: string;
  readonly signal: AbortSignal;
  readonly tell: (words: string) => void;
  readonly mostBytes: number;
  /** Times in ms; shorter in tests. */
  readonly fetching?: { readonly idleMs: number; readonly waitsMs: readonly number[] };
}

/** A file that has come whole. */
export interface FetchedArchive {
  readonly path: string;
  /** The last part of its address. */
  readonly name: string;
  /** Its address without what may be secret in it. */
  readonly source: string;
  readonly discard: () => Promise<void>;
}

/** Nothing for half a minute is a cut; then it is tried again, later each time. */
const usualTimes = { idleMs: 30_000, waitsMs: [1_000, 3_000, 9_000] };

/** What is remembered of a download between two runs. */
const memory = z.object({ address: z.string(), version: z.string() });

/** An address, where the words are one. Throws Refused where it is one that is not fetched. */
export function readAddress(words: string): URL | null {
  if (!/^[a-z][a-z0-9+.-]+:\/\//i.test(words)) return null;
  if (!URL.canParse(words)) throw new Refused(`"${words}" is not an address. Check it.`);
  const url = new URL(words);
  if (url.username !== "" || url.password !== "")
    throw new Refused("An address with a name and a password in it is not fetched. Fetch the file yourself.");
  return url;
}

/**
 * Fetches a file, and goes on where an earlier run was cut. Throws Refused; after a cut what has come is kept for the
 * next run where the server can send the rest of it.
 */
export async function fetchArchive(address: URL, parts: FetchParts): Promise<FetchedArchive> {
  const mark = createHash("sha256").update(address.href).digest("hex").slice(0, 16);
  const files = {
    part: join(parts.folder, `.arriving-${mark}.part`),
    memory: join(parts.folder, `.arriving-${mark}.json`),
  };
  const discard = async (): Promise<void> => {
    await rm(files.part, { force: true });
    await rm(files.memory, { force: true });
  };
  const source = `${address.origin}${address.pathname}`;
  const name = decodeURIComponent(
    address.pathname.split("/").findLast((part) => part !== "") ?? address.host,
  );
  try {
    await fetchAll(address, name, files, parts);
    return { path: files.part, name, source, discard };
  } catch (problem) {
    const isStopped = parts.signal.aborted;
    if (!isStopped && !(problem instanceof Cut)) {
      await discard();
      throw problem;
    }
    const why = isStopped ? "you stopped it" : (problem as Error).message;
    const kept = (await rememberedVersion(address, files)) === null ? 0 : await sizeOf(files.part);
    if (kept === 0) await discard();
    throw new Refused(
      kept === 0
        ? `${name} could not be fetched (${why}). Try again.`
        : `The download of ${name} was cut after ${megabytes(kept)} (${why}). Run the same command again; it goes on from there.`,
    );
  }
}

interface Files {
  readonly part: string;
  readonly memory: string;
}

async function fetchAll(address: URL, name: string, files: Files, parts: FetchParts): Promise<void> {
  const { waitsMs } = parts.fetching ?? usualTimes;
  let tries = 0;
  for (;;) {
    const before = await sizeOf(files.part);
    try {
      return await fetchOn(address, name, files, parts);
    } catch (problem) {
      if (!(problem instanceof Cut)) throw problem;
      if ((await sizeOf(files.part)) > before) tries = 0;
      const pause = waitsMs[tries];
      if (pause === undefined) throw problem;
      tries += 1;
      parts.tell(`The line was cut (${problem.message}). Trying again.`);
      await wait(pause, undefined, { signal: parts.signal });
    }
  }
}

/** One request: the rest of the file, or the whole where the server has another one by now. */
async function fetchOn(address: URL, name: string, files: Files, parts: FetchParts): Promise<void> {
  const { signal, tell, mostBytes } = parts;
  const version = await rememberedVersion(address, files);
  const have = version === null ? 0 : await sizeOf(files.part);
  const { idleMs } = parts.fetching ?? usualTimes;
  const answer = await openAddress(address, { from: have, version, idleMs, signal });
  const total = answer.totalBytes;
  if (total !== null && total > mostBytes) {
    answer.close();
    throw new Refused(`${name} has ${megabytes(total)}, too much for the engine. Take a smaller model.`);
  }
  if (answer.version === null) await rm(files.memory, { force: true });
  else await writeFile(files.memory, JSON.stringify({ address: address.href, version: answer.version }));
  const begin = answer.from;
  if (begin === 0) await writeFile(files.part, "");
  else await truncate(files.part, begin);
  if (begin > 0) tell(`Going on after ${megabytes(begin)}.`);
  let bytes = begin;
  const told = tellTenths(total, tell);
  const counter = new Transform({
    transform(part: Buffer, _encoding, done) {
      bytes += part.length;
      told(bytes);
      done(bytes > mostBytes ? new Refused(`${name} does not end. Nothing was kept of it.`) : null, part);
    },
  });
  await pipeline(
    Readable.from(answer.bytes),
    counter,
    createWriteStream(files.part, { flags: "a", flush: true }),
    {
      signal,
    },
  );
  if (total !== null && bytes < total) throw new Cut("the server stopped sending");
  if (total !== null && bytes > total)
    throw new Refused(`${name} is longer than its server says. Try again.`);
}

async function rememberedVersion(address: URL, files: Files): Promise<string | null> {
  try {
    const kept = memory.parse(JSON.parse(await readFile(files.memory, "utf8")));
    return kept.address === address.href ? kept.version : null;
  } catch {
    return null;
  }
}

const sizeOf = (path: string): Promise<number> =>
  stat(path).then(
    ({ size }) => size,
    () => 0,
  );

/** Says every tenth of the whole, or every 10 MB where nobody knows the whole. */
function tellTenths(total: number | null, tell: (words: string) => void): (bytes: number) => void {
  const step = total === null ? 10_000_000 : Math.max(1, total / 10);
  let last = -1;
  return (bytes) => {
    const now = Math.floor(bytes / step);
    if (now === last) return;
    const isFirst = last === -1;
    last = now;
    if (isFirst && total === null) return;
    tell(
      total === null
        ? `Fetched ${megabytes(bytes)}.`
        : `Fetched ${megabytes(bytes)} of ${megabytes(total)}, ${Math.floor((100 * bytes) / total)} %.`,
    );
  };
}
