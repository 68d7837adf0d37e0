import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, get, type IncomingHttpHeaders, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { Router } from "express";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import {
  embeddedAssets,
  embeddedBase,
  embeddedDetector,
  embeddedTranscribers,
  transcriberPath,
} from "../../core/speech/embedded-assets.ts";
import { createApp } from "../../server/web/app.ts";

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

let folder = "";
let server: Server;
let reports: unknown[] = [];
const script = `console.log("${"stir ".repeat(1000)}")`;

/** The path goes out as it is written: `fetch` would tidy "..", and would not send another Host. */
function ask(path: string, headers: Record<string, string> = {}): Promise<Answer> {
  const { port } = server.address() as AddressInfo;
  return new Promise((resolve, reject) => {
    get({ host: "127.0.0.1", port, path, headers }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    }).on("error", reject);
  });
}

beforeEach(async () => {
  reports = [];
  folder = mkdtempSync(join(tmpdir(), "page-"));
  const page = join(folder, "client");
  mkdirSync(join(page, "assets"), { recursive: true });
  writeFileSync(join(page, "index.html"), `<!doctype html><title>Stovecall</title>${" ".repeat(2000)}`);
  writeFileSync(join(page, "assets", "main-4f3a.js"), script);
  writeFileSync(join(folder, "secret.txt"), "not for the network");
  mkdirSync(join(folder, "models"));
  const voice = Router().get("/voice", () => {
    throw new Error("the voice fell over");
  });
  const app = createApp({
    pantry: () => Promise.resolve({ meals: [], mistakes: [], cooking: null }),
    voice,
    calendar: Router(),
    buying: Router(),
    meal: Router(),
    foods: Router(),
    pageFolder: page,
    modelsFolder: join(folder, "models"),
    report: (problem) => reports.push(problem),
  });
  server = createServer(app);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
});

afterEach(async () => {
  await new Promise((resolve) => server.close(resolve));
  rmSync(folder, { recursive: true, force: true });
});

describe("the page", () => {
  it("[N30] the page is asked for anew each time, and is not sent again when it is the same", async () => {
    const first = await ask("/");
    expect(first).toMatchObject({ status: 200, headers: { "cache-control": "no-cache" } });
    expect(first.headers["content-type"]).toMatch(/^text\/html/);
    const tag = first.headers.etag ?? "";
    expect(await ask("/", { "if-none-match": tag })).toMatchObject({ status: 304, body: Buffer.alloc(0) });
  });

  it("[N30] a file with a hash in its name is kept for ever", async () => {
    const { headers } = await ask("/assets/main-4f3a.js");
    expect(headers["cache-control"]).toBe("public, max-age=31536000, immutable");
  });

  it.each([
    ["br", "gzip, deflate, br", brotliDecompressSync],
    ["gzip", "gzip", gunzipSync],
    [undefined, "identity", (bytes: Buffer) => bytes],
  ])("[N31] text travels packed as %s when the browser takes %s", async (packing, accepts, unpack) => {
    const { headers, body } = await ask("/assets/main-4f3a.js", { "accept-encoding": accepts });
    expect(headers["content-encoding"]).toBe(packing);
    expect(headers.vary).toMatch(/accept-encoding/i);
    expect(unpack(body).toString()).toBe(script);
    if (packing !== undefined) expect(body.length).toBeLessThan(script.length / 10);
  });

  it("[N31] a file that was built again is packed again", async () => {
    await ask("/assets/main-4f3a.js", { "accept-encoding": "br" });
    writeFileSync(join(folder, "client", "assets", "main-4f3a.js"), `${script};${script}`);
    const { body } = await ask("/assets/main-4f3a.js", { "accept-encoding": "br" });
    expect(brotliDecompressSync(body).toString()).toBe(`${script};${script}`);
  });

  it("[N31] what would take longer to pack than to send travels as it is", async () => {
    const large = Buffer.alloc(4_000_001, "ort");
    writeFileSync(join(folder, "client", "assets", "large-4f3a.wasm"), large);
    const { headers, body } = await ask("/assets/large-4f3a.wasm", { "accept-encoding": "br" });
    expect(headers["content-encoding"]).toBeUndefined();
    expect(body.equals(large)).toBe(true);
  });

  it("[N32] an address of one plain word is a place in the page", async () => {
    expect((await ask("/cook")).body.toString()).toContain("<title>Stovecall</title>");
  });

  it.each([
    "/../secret.txt",
    "/assets/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/assets/%00.js",
    "/.env.js",
  ])("[N33] %s reaches nothing outside the page", async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(body.toString()).not.toContain("not for the network");
    expect(reports).toEqual([]);
  });

  it("[N33] a file that is not there is told in one sentence", async () => {
    const { status, body } = await ask("/assets/other.js");
    expect([status, JSON.parse(body.toString())]).toEqual([
      404,
      { error: "There is nothing at this address." },
    ]);
  });

  it("[N34] before the page has been built, its address says how to build it", async () => {
    rmSync(join(folder, "client"), { recursive: true });
    const { status, body } = await ask("/");
    expect([status, body.toString()]).toEqual([503, "The page has not been built. Run: npm run build"]);
  });
});

describe("what every answer says to the browser", () => {
  const policyIn = (headers: { readonly [name: string]: unknown }): Readonly<Record<string, string>> =>
    Object.fromEntries(
      String(headers["content-security-policy"])
        .split(";")
        .map((part) => part.trim().split(" "))
        .map(([name = "", ...sources]) => [name, sources.join(" ")]),
    );

  it("[N35] only our own scripts, WebAssembly, sockets, sounds and frame; our own microphone", async () => {
    const { headers } = await ask("/", { host: "127.0.0.1:8321" });
    expect(policyIn(headers)).toEqual({
      "default-src": "'self'",
      "script-src": "'self' 'wasm-unsafe-eval'",
      "script-src-attr": "'none'",
      "worker-src": "'self' blob:",
      "connect-src": "'self' blob: data: ws://127.0.0.1:8321",
      "media-src": "'self' blob: data:",
      "style-src": "'self'",
      "img-src": "'self' data:",
      "font-src": "'self'",
      "object-src": "'none'",
      "base-uri": "'none'",
      "form-action": "'self'",
      "frame-src": "'self'",
      "frame-ancestors": "'none'",
    });
    expect(headers["permissions-policy"]).toContain("microphone=(self)");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["cross-origin-resource-policy"]).toBe("same-origin");
    expect(headers["x-powered-by"]).toBeUndefined();
  });

  it("[N35] one frame may make code from text, and nothing else but load its model; only our page may hold it", async () => {
    const { headers } = await ask("/vosk-frame.html", { host: "127.0.0.1:8321" });
    expect(policyIn(headers)).toEqual({
      "default-src": "'none'",
      "script-src": "'self' 'unsafe-eval' 'wasm-unsafe-eval'",
      "worker-src": "'self' blob:",
      "connect-src": "'self' blob: data:",
      "base-uri": "'none'",
      "form-action": "'none'",
      "frame-ancestors": "'self'",
    });
    expect(headers["x-frame-options"]).toBe("SAMEORIGIN");
  });

  it("[N20] a request under a foreign name is answered with nothing but a sentence", async () => {
    for (const path of ["/", "/api/meals", "/speech/models"]) {
      const { status, body } = await ask(path, { host: "evil.example" });
      expect([status, body.toString()]).toEqual([
        421,
        "Stovecall answers on this machine only. Open the address that it printed.",
      ]);
    }
  });

  it("[N36] a bug of ours is reported here and told there in one sentence, without its trace", async () => {
    const { status, body } = await ask("/voice?text=hello");
    expect([status, JSON.parse(body.toString())]).toEqual([
      500,
      { error: "Something went wrong in the server. Try again." },
    ]);
    expect(reports).toHaveLength(1);
  });
});

describe("what the recognisers load", () => {
  it("[N40] the bundled engine and its English model are there", async () => {
    const engine = await ask("/speech/embedded/soundswallower.web.wasm");
    expect([engine.status, engine.headers["content-type"]]).toEqual([200, "application/wasm"]);
    // Every WebAssembly module begins with these four bytes. Source: WebAssembly Core Specification, section 5.5.16.
    expect(engine.body.subarray(0, 4)).toEqual(Buffer.from([0, 0x61, 0x73, 0x6d]));
    for (const asset of embeddedAssets) expect((await ask(embeddedBase + asset)).status).toBe(200);
  });

  it("[N40] so are the networks of both transcribers and of the voice detector", async () => {
    const { encoder, decoder } = embeddedTranscribers;
    const [quick, careful] = [transcriberPath("quick"), transcriberPath("careful")];
    const networks = [quick, careful].flatMap((path) => [path + encoder, path + decoder]);
    for (const network of [...networks, embeddedDetector.file]) {
      const { status, body } = await ask(embeddedBase + network);
      expect([network, status]).toEqual([network, 200]);
      expect(body.length).toBeGreaterThan(1e6);
    }
  });

  it.each([
    "/speech/embedded/package.json",
    "/speech/embedded/model/fr-fr/mdef",
    "/speech/embedded/model/en-us/..%2f..%2f..%2fpackage.json",
  ])("[N40] %s is nobody's business", async (path) =>
    expect((await ask(path)).status).toBeGreaterThanOrEqual(400),
  );

  it("[N41] without a model in models/ the list is empty", async () => {
    expect(JSON.parse((await ask("/speech/models")).body.toString())).toEqual({ models: [] });
  });

  it("[N41] a model's address changes with its content, and only the address of the moment works", async () => {
    const archive = join(folder, "models", "small-en.tar.gz");
    writeFileSync(join(folder, "models", "README.md"), "about models");
    writeFileSync(archive, "one");
    const listed = async () => {
      const answer = JSON.parse((await ask("/speech/models")).body.toString()) as {
        models: readonly { url: string }[];
      };
      return answer.models;
    };
    const [before] = await listed();
    expect(before).toEqual({
      kind: "vosk",
      name: "small-en",
      url: expect.stringMatching(/^\/speech\/models\/[0-9a-f]{16}\/small-en.tar.gz$/) as string,
      bytes: 3,
    });
    expect((await ask(before?.url ?? "")).body.toString()).toBe("one");
    writeFileSync(archive, "another");
    const [after] = await listed();
    expect(after?.url).not.toBe(before?.url);
    expect((await ask(before?.url ?? "")).status).toBe(404);
    expect((await ask("/speech/models/0000000000000000/README.md")).status).toBe(404);
  });
});
