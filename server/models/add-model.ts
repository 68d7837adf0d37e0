import { createReadStream } from "node:fs";
import { link, mkdir, readdir, rename, rm, statfs, writeFile } from "node:fs/promises";
import { createHash } from "node:crypto";
import { basename, join, resolve } from "node:path";
import { pipeline } from "node:stream/promises";
import { err, ok, type Result } from "../../core/units/result.ts";
import { type Archive, megabytes } from "./archive.ts";
import { type FetchParts, fetchArchive, readAddress } from "./fetch-archive.ts";
import { type Limits, usualLimits } from "./limits.ts";
import { type Manifest, manifestText } from "./manifest.ts";
import { openArchive } from "./open-archive.ts";
import { type OpenTarget, packModel } from "./pack-model.ts";
import { Refused, sentenceOf } from "./refused.ts";
import { type FoundModel, survey } from "./survey.ts";

/** What a person asked for. */
export interface Addition {
  /** A file, a folder, or an address that begins with http. */
  readonly from: string;
  /** The name in models/; that of the model's own folder where null. */
  readonly name: string | null;
  readonly licence: string;
  /** What the file must come to, 64 hexadecimal digits in lower case; null where nobody said. */
  readonly sha256: string | null;
}

/** What it is done with. */
export interface AddParts {
  readonly modelsFolder: string;
  readonly signal: AbortSignal;
  /** Told now and then how far it is, in a few words. */
  readonly tell: (words: string) => void;
  readonly limits?: Limits;
  readonly openTarget?: OpenTarget;
  readonly fetching?: FetchParts["fetching"];
}

/** A model that now lies in models/. */
export interface AddedModel extends Manifest {
  readonly name: string;
  /** Packed. */
  readonly bytes: number;
  readonly unpackedBytes: number;
  readonly graph: FoundModel["graph"];
}

/** What is half done carries this in front, and the number of the process that does it. */
const unfinished = /^\.adding-(\d+)-/;

/**
 * Checks a model and packs it into models/ with its manifest. After a failure models/ is as it was; only of a download
 * that was cut the part that came stays, under a hidden name, to go on from.
 * Error: one sentence.
 */
export async function addModel(addition: Addition, parts: AddParts): Promise<Result<AddedModel, string>> {
  try {
    await mkdir(parts.modelsFolder, { recursive: true });
    await sweep(parts.modelsFolder);
    const address = readAddress(addition.from);
    if (address === null) {
      const archive = await openArchive(addition.from, undefined, parts.limits);
      if (addition.sha256 !== null) await compareFile(addition.from, archive, addition.sha256);
      return ok(await take(archive, basename(resolve(addition.from)), addition, parts));
    }
    return ok(await addFetched(address, addition, parts));
  } catch (problem) {
    return err(sentenceOf(problem, addition.from));
  }
}

async function addFetched(address: URL, addition: Addition, parts: AddParts): Promise<AddedModel> {
  const { modelsFolder, signal, tell, limits = usualLimits, fetching } = parts;
  const fetched = await fetchArchive(address, {
    folder: modelsFolder,
    signal,
    tell,
    mostBytes: limits.packedBytes,
    ...(fetching === undefined ? {} : { fetching }),
  });
  try {
    const archive = await openArchive(fetched.path, fetched.name, limits);
    if (addition.sha256 !== null) await compareFile(fetched.path, archive, addition.sha256);
    return await take(archive, fetched.source, addition, parts);
  } finally {
    await fetched.discard();
  }
}

async function compareFile(path: string, { kind, name }: Archive, wanted: string): Promise<void> {
  if (kind === "folder")
    throw new Refused(`A folder has no checksum. Leave --sha256 out, or give the archive.`);
  const hash = createHash("sha256");
  await pipeline(createReadStream(path), hash);
  const is = hash.digest("hex");
  if (is === wanted) return;
  throw new Refused(
    `The checksum of ${name} is wrong: it is ${is}, and ${wanted} was asked for. It is not the file that you mean; fetch it anew.`,
  );
}

async function take(
  archive: Archive,
  source: string,
  addition: Addition,
  parts: AddParts,
): Promise<AddedModel> {
  const { modelsFolder, tell, signal, openTarget } = parts;
  tell(`Checking ${archive.name}.`);
  const model = await survey(archive);
  const name = addition.name ?? nameFor(model, archive);
  await refuseTaken(modelsFolder, name);
  await refuseFull(modelsFolder, archive, model);
  tell(`Packing ${model.files} files, ${megabytes(model.bytes)}.`);
  const draft = join(modelsFolder, `.adding-${process.pid}-${name}`);
  try {
    const packed = await packModel(archive, model, name, `${draft}.tar.gz`, signal, openTarget);
    const { licence } = addition;
    const manifest: Manifest = { licence, sha256: packed.sha256, sampleRateHz: model.sampleRateHz, source };
    await writeFile(`${draft}.json`, manifestText(manifest), { flush: true });
    await place(draft, join(modelsFolder, name));
    return { name, ...manifest, bytes: packed.bytes, unpackedBytes: model.bytes, graph: model.graph };
  } finally {
    await rm(`${draft}.tar.gz`, { force: true });
    await rm(`${draft}.json`, { force: true });
  }
}

/** The manifest first: a model is never there without what is known of it. Nothing that is there is overwritten. */
async function place(draft: string, final: string): Promise<void> {
  await rename(`${draft}.json`, `${final}.json`);
  try {
    await link(`${draft}.tar.gz`, `${final}.tar.gz`).catch((problem: unknown) => {
      // A disk without hard links, as in a camera's card.
      if (problem instanceof Error && "code" in problem && problem.code !== "EEXIST")
        return rename(`${draft}.tar.gz`, `${final}.tar.gz`);
      throw new Refused(
        `Another model of that name came meanwhile. Add this one under another, with --name.`,
      );
    });
  } catch (problem) {
    await rm(`${final}.json`, { force: true });
    throw problem;
  }
}

/** A name that the server serves: letters, digits, points and dashes. */
function nameFor({ root }: FoundModel, archive: Archive): string {
  const own = root.split("/").at(-1) ?? "";
  const name = own === "" ? archive.name.replace(/\.(?:zip|tar\.gz|tgz)$/i, "") : own;
  return name.replace(/[^\w.-]+/g, "-").replace(/^[^\w]+/, "") || "model";
}

async function refuseTaken(folder: string, name: string): Promise<void> {
  const taken = (await readdir(folder)).find(
    (file) => file === `${name}.json` || file === `${name}.tar.gz` || file === `${name}.tgz`,
  );
  if (taken !== undefined)
    throw new Refused(
      `There is already a ${taken} in the models folder. Take it out first, or give this model another name with --name.`,
    );
}

/** Better before than in the middle. A packed model is never larger than it is unpacked, but for a little. */
async function refuseFull(
  folder: string,
  { kind, packedBytes }: Archive,
  { bytes }: FoundModel,
): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  const wanted = kind === "folder" ? bytes : Math.min(bytes, packedBytes * 2);
  if (bavail * bsize > wanted) return;
  throw new Refused(
    `The disk is too full: ${megabytes(wanted)} are wanted in the models folder, and ${megabytes(bavail * bsize)} are free. Make room and try again.`,
  );
}

/** Takes away what a killed run has left. */
async function sweep(folder: string): Promise<void> {
  for (const file of await readdir(folder)) {
    const pid = unfinished.exec(file)?.[1];
    if (pid !== undefined && !isRunning(Number(pid))) await rm(join(folder, file), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return pid !== process.pid;
  } catch {
    return false;
  }
}
