import { readdir } from "node:fs/promises";
import { extname, join } from "node:path";
import { Router, type Request, type Response } from "express";
import { FilePacker } from "./packed-file.ts";

/** Vite puts a hash of the content into these names, so what they hold never changes. */
const hashed = /^\/assets\//;
/** Names as the build writes them: no "..", no hidden file, nothing to decode. */
const plainPath = /^(?:\/[A-Za-z0-9_-][A-Za-z0-9._-]*)+$/;

/** A place in the page: "/", "/cook". */
const place = /^\/[A-Za-z0-9_-]*$/;

const notBuilt = "The page has not been built. Run: npm run build";

async function send(
  packer: FilePacker,
  file: string,
  request: Request,
  response: Response,
): Promise<boolean> {
  // Asked one by one: browsers list both without a preference, and the smaller one is ours to prefer.
  const packing =
    (["br", "gzip"] as const).find((one) => request.acceptsEncodings(one) === one) ?? "identity";
  const packed = await packer.pack(file, packing);
  if (packed === null) return false;
  response
    .set("Cache-Control", hashed.test(request.path) ? "public, max-age=31536000, immutable" : "no-cache")
    .set("ETag", packed.tag)
    .set("Vary", "Accept-Encoding")
    .type(extname(file));
  if (packed.packing !== "identity") response.set("Content-Encoding", packed.packing);
  if (request.fresh) response.status(304).end();
  else response.send(packed.body);
  return true;
}

/** Compresses the scripts and styles before anybody asks, so that the first page does not wait for it. */
async function warm(packer: FilePacker, folder: string): Promise<void> {
  const names = await readdir(join(folder, "assets")).catch(() => []);
  for (const name of names.filter((one) => /\.(js|css)$/.test(one))) {
    await packer.pack(join(folder, "assets", name), "br");
  }
}

/** The built page and its files. An address of one plain word is a place in the page. */
export function pageFiles(folder: string): Router {
  const packer = new FilePacker();
  void warm(packer, folder);
  const router = Router();
  router.get(/.*/, async (request, response, next) => {
    const { path } = request;
    const isPlace = place.test(path);
    if (!isPlace && !plainPath.test(path)) {
      next();
      return;
    }
    const file = isPlace ? join(folder, "index.html") : join(folder, ...path.split("/"));
    if (await send(packer, file, request, response)) return;
    if (isPlace) response.status(503).type("text/plain").send(notBuilt);
    else next();
  });
  return router;
}
