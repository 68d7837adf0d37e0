import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { Router } from "express";
import {
  embeddedAssets,
  embeddedBase,
  embeddedDetector,
  embeddedPackage,
  embeddedTranscribers,
  transcriberPath,
  transcriberSizes,
} from "../../core/speech/embedded-assets.ts";
import { detectorFolder, transcriberFolder, transcriberTokens } from "../hear/network-files.ts";

/** A speech model that the cook has put into models/. */
export interface SpeechModel {
  /** The one kind of engine that takes a model of the cook's own. */
  readonly kind: "vosk";
  readonly name: string;
  /** Holds the start of the archive's SHA-256, so that a browser never keeps a model that was replaced. */
  readonly url: string;
  readonly bytes: number;
}

const archive = /^[\w][\w.-]*\.(?:tar\.gz|tgz)$/;
const hashes = new Map<string, string>();

async function hashOf(path: string, version: string): Promise<string> {
  const key = `${path} ${version}`;
  const known = hashes.get(key);
  if (known !== undefined) return known;
  const hash = createHash("sha256");
  await pipeline(createReadStream(path), hash);
  const digest = hash.digest("hex").slice(0, 16);
  hashes.set(key, digest);
  return digest;
}

async function describe(folder: string, file: string): Promise<SpeechModel> {
  const { size, mtimeMs } = await stat(join(folder, file));
  const hash = await hashOf(join(folder, file), `${mtimeMs} ${size}`);
  return {
    kind: "vosk",
    name: file.replace(/\.(?:tar\.gz|tgz)$/, ""),
    url: `/speech/models/${hash}/${file}`,
    bytes: size,
  };
}

async function models(folder: string): Promise<readonly SpeechModel[]> {
  const names = await readdir(folder).catch(() => []);
  return Promise.all(
    names
      .filter((name) => archive.test(name))
      .toSorted()
      .map((name) => describe(folder, name)),
  );
}

const revalidated = { headers: { "Cache-Control": "no-cache" }, cacheControl: false } as const;

/** The recogniser that comes with the program: what a browser loads of it, and nothing else of its packages. */
function embedded(): Router {
  const root = dirname(createRequire(import.meta.url).resolve(embeddedPackage));
  const router = Router();
  for (const asset of embeddedAssets) {
    router.get(embeddedBase + asset, (_request, response) => {
      response.sendFile(asset, { root, ...revalidated });
    });
  }
  const { encoder, decoder, tokens } = embeddedTranscribers;
  const networks = [
    ...transcriberSizes.flatMap((size) =>
      [encoder, decoder].map((file) => [transcriberPath(size), file, transcriberFolder(size)] as const),
    ),
    ["", embeddedDetector.file, detectorFolder()] as const,
  ];
  for (const [below, network, folder] of networks) {
    router.get(embeddedBase + below + network, (_request, response) => {
      response.sendFile(network, { root: folder, ...revalidated });
    });
  }
  router.get(embeddedBase + tokens, async (_request, response) => {
    response.set("Cache-Control", "no-cache").json(await transcriberTokens());
  });
  return router;
}

/**
 * What the recognisers in the browser load.
 * GET /speech/embedded/… : the bundled engine. GET /speech/models : which models models/ holds, and their archives.
 */
export function speechFiles(modelsFolder: string): Router {
  const router = Router();
  router.use(embedded());
  router.get("/speech/models", async (_request, response) => {
    response.set("Cache-Control", "no-store").json({ models: await models(modelsFolder) });
  });
  router.get("/speech/models/:hash/:file", async (request, response, next) => {
    const { hash, file } = request.params;
    const found = (await models(modelsFolder)).find(({ url }) => url === `/speech/models/${hash}/${file}`);
    if (found === undefined) next();
    else response.sendFile(file, { root: modelsFolder, immutable: true, maxAge: "1y" });
  });
  return router;
}
