import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { readManifest, notStated } from "./manifest.ts";
import { openArchive } from "./open-archive.ts";
import { Refused, sentenceOf } from "./refused.ts";
import { type FoundModel, survey } from "./survey.ts";

/** One thing in models/, as `models` tells it. */
export interface ListedModel {
  /** As it lies there: "small-en.tar.gz". */
  readonly file: string;
  readonly name: string;
  readonly bytes: number;
  readonly unpackedBytes: number | null;
  readonly sampleRateHz: number | null;
  /** `open`: takes the list of what can be said. `fixed`: ignores it. */
  readonly graph: FoundModel["graph"] | null;
  readonly licence: string;
  readonly source: string | null;
  readonly sha256: string | null;
  /** What is wrong with it and what to do; null where it is right. */
  readonly problem: string | null;
}

/** Which recogniser the page takes, and why, in a sentence. */
export interface ChosenEngine {
  readonly engine: "vosk" | "embedded";
  readonly model: string | null;
  readonly why: string;
}

/** What the server offers to the page, in the order in which it does. */
const served = /^\w[\w.-]*\.(?:tar\.gz|tgz)$/;
const ending = /\.(?:tar\.gz|tgz)$/;

/** Reads and checks everything in models/, each archive from its beginning to its end. A folder that is not there is empty. */
export async function modelsIn(folder: string): Promise<readonly ListedModel[]> {
  const files = (await readdir(folder).catch(() => [])).toSorted();
  const listed: ListedModel[] = [];
  for (const file of files) {
    if (file === "README.md" || file.startsWith(".")) continue;
    if (file.endsWith(".json")) {
      const name = file.slice(0, -".json".length);
      if (files.some((other) => other.replace(ending, "") === name && served.test(other))) continue;
    }
    listed.push(await look(folder, file));
  }
  return listed;
}

async function look(folder: string, file: string): Promise<ListedModel> {
  const { size } = await stat(join(folder, file));
  const plain = {
    file,
    name: file.replace(ending, ""),
    bytes: size,
    unpackedBytes: null,
    sampleRateHz: null,
    graph: null,
    licence: notStated,
    source: null,
    sha256: null,
  };
  if (!served.test(file)) return { ...plain, problem: unused(file) };
  const manifest = await readManifest(join(folder, `${plain.name}.json`));
  const sha256 = await hashOf(join(folder, file));
  const known =
    manifest === null || manifest === "unreadable"
      ? {}
      : { licence: manifest.licence, source: manifest.source };
  const about = { ...plain, ...known, sha256 };
  try {
    const { bytes, sampleRateHz, graph } = await modelOf(join(folder, file), file);
    const problem = faultOfManifest(manifest, plain.name, sha256);
    return { ...about, unpackedBytes: bytes, sampleRateHz, graph, problem };
  } catch (problem) {
    return { ...about, problem: sentenceOf(problem, file) };
  }
}

async function modelOf(path: string, file: string): Promise<FoundModel> {
  const archive = await openArchive(path, file);
  if (archive.kind !== "tar.gz")
    throw new Refused(
      `${file} is a ${archive.kind} under another name. Take it out, and add it with "models add".`,
    );
  const model = await survey(archive);
  // The engine takes away the first part of every path, and looks for am/ there.
  if (model.root === "" || model.root.includes("/"))
    throw new Refused(
      `${file} does not hold its model in one top folder. Take it out, and add it with "models add".`,
    );
  if (!model.namesFolders)
    throw new Refused(
      `${file} leaves out the entries of its folders, without which the engine cannot keep it. Take it out, and add it with "models add".`,
    );
  return model;
}

function faultOfManifest(
  manifest: Awaited<ReturnType<typeof readManifest>>,
  name: string,
  sha256: string,
): string | null {
  if (manifest === "unreadable")
    return `${name}.json is no manifest. Take both files out, and add the model anew.`;
  if (manifest !== null && manifest.sha256 !== sha256)
    return `${name} is not the file that its manifest was written for. Take both out, and add the model anew.`;
  return null;
}

const unused = (file: string): string =>
  file.endsWith(".json")
    ? `${file} has no model beside it. Take it out.`
    : `The page does not use ${file}. Add it with "models add", then take it out.`;

async function hashOf(path: string): Promise<string> {
  const hash = createHash("sha256");
  await pipeline(createReadStream(path), hash);
  return hash.digest("hex");
}

/** The page takes the first model that the server lists, and its own recogniser where that one does not load. */
export function chosenEngine(models: readonly ListedModel[]): ChosenEngine {
  const [first, ...others] = models.filter(({ file }) => served.test(file));
  if (first === undefined)
    return {
      engine: "embedded",
      model: null,
      why: "There is no model here, so the page uses its own recogniser.",
    };
  if (first.unpackedBytes === null)
    return {
      engine: "embedded",
      model: null,
      why: `The page tries ${first.name} first and cannot use it, so its own recogniser takes over. Take ${first.file} out.`,
    };
  const why = others.length === 0 ? "it is the only one" : "its name comes first";
  return { engine: "vosk", model: first.name, why: `The page uses ${first.name}, because ${why}.` };
}
