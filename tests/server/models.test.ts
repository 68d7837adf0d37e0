import { createHash } from "node:crypto";
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { extract } from "tar-stream";
import { describe, expect, it } from "vitest";
import { sampleRateIn } from "../../server/models/survey.ts";
import { openModel, piecesOf, tarGz, zip, type Piece } from "./invented-models.ts";
import { useShelf } from "./model-shelf.ts";

const shelf = useShelf();
const { cli, add, write, inModels } = shelf;
const sha256 = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("hex");

/** What a tar.gz holds, by path; folders with null. */
async function unpacked(bytes: Buffer): Promise<Readonly<Record<string, Buffer | null>>> {
  const found: Record<string, Buffer | null> = {};
  const unpacking = extract();
  unpacking.end(gunzipSync(bytes));
  for await (const entry of unpacking) {
    const parts: Buffer[] = [];
    for await (const part of entry as AsyncIterable<Buffer>) parts.push(part);
    found[entry.header.name] = entry.header.type === "directory" ? null : Buffer.concat(parts);
  }
  return found;
}

const litter: readonly Piece[] = [
  { path: "__MACOSX/small-en/._README", content: Buffer.from("x") },
  { path: "small-en/.DS_Store", content: Buffer.from("x") },
];

describe("a model that is added", () => {
  it.each([
    [
      "a zip",
      async () =>
        write(
          "small-en.zip",
          zip([{ path: "small-en", isFolder: true }, ...piecesOf("small-en"), ...litter]),
        ),
    ],
    [
      "a tar.gz",
      async () =>
        write(
          "some.tgz",
          await tarGz([{ path: "small-en/", isFolder: true }, ...piecesOf("small-en"), ...litter]),
        ),
    ],
    [
      "a tar.gz with its model deeper",
      async () => write("x.tar.gz", await tarGz(piecesOf("./backup/of/small-en"))),
    ],
    [
      "a folder",
      async () => {
        for (const { path, content } of [...piecesOf("small-en"), ...litter.slice(1)])
          write(path, content ?? "");
        return join(shelf.folder, "small-en");
      },
    ],
  ])("[V30] from %s becomes a tar.gz with one top folder, and a manifest", async (_what, make) => {
    const from = await make();
    expect([
      await cli("add", from, "--licence", "free, says its page", "--json"),
      shelf.told.slice(0, 1),
    ]).toEqual([0, [expect.stringMatching(/^Checking /)]]);
    expect(inModels()).toEqual(["small-en.json", "small-en.tar.gz"]);
    const packed = readFileSync(join(shelf.models, "small-en.tar.gz"));
    const files = Object.fromEntries(
      Object.entries(openModel).map(([path, content]) => [`small-en/${path}`, content]),
    );
    const folders = Object.fromEntries(
      ["", "/am", "/conf", "/graph", "/graph/phones"].map((one) => [`small-en${one}`, null]),
    );
    const found = await unpacked(packed);
    // A folder's name may end with a slash.
    expect(
      Object.fromEntries(Object.entries(found).map(([path, content]) => [path.replace(/\/$/, ""), content])),
    ).toEqual({
      ...files,
      ...folders,
    });
    const manifest = {
      licence: "free, says its page",
      sha256: sha256(packed),
      sampleRateHz: 16_000,
      source: from.split("/").at(-1),
    };
    expect(JSON.parse(readFileSync(join(shelf.models, "small-en.json"), "utf8"))).toEqual(manifest);
    expect(shelf.out.map((line) => JSON.parse(line) as unknown)).toEqual([
      {
        name: "small-en",
        ...manifest,
        bytes: packed.length,
        unpackedBytes: Object.values(openModel).reduce((sum, { length }) => sum + length, 0),
        graph: "open",
      },
    ]);
  });

  it("[V30] the same model packed twice is the same bytes", async () => {
    const one = await add(write("a.zip", zip(piecesOf("m"))), {}, { name: "one" });
    const two = await add(write("b.zip", zip(piecesOf("m"))), {}, { name: "one2" });
    const again = await add(write("c.tgz", await tarGz(piecesOf("x"))), {}, { name: "one" });
    expect([one.ok, two.ok, again.ok]).toEqual([true, true, false]);
    rmSync(join(shelf.models, "one.tar.gz"));
    rmSync(join(shelf.models, "one.json"));
    const fromTar = await add(write("c.tgz", await tarGz(piecesOf("x"))), {}, { name: "one" });
    expect(fromTar.ok && fromTar.value.sha256).toBe(one.ok && one.value.sha256);
  });

  it("[V31] a licence that nobody gave is recorded as not stated, and said", async () => {
    expect(await cli("add", write("m.zip", zip(piecesOf("m"))))).toBe(0);
    expect(shelf.out.join("\n")).toContain("Its licence is not stated.");
    expect(shelf.out.join("\n")).toContain("has not been measured");
    expect(JSON.parse(readFileSync(join(shelf.models, "m.json"), "utf8"))).toMatchObject({
      licence: "not stated",
    });
  });

  it("[V31] a checksum that is right is taken, in capitals too", async () => {
    const bytes = zip(piecesOf("m"));
    expect(await cli("add", write("m.zip", bytes), "--sha256", sha256(bytes).toUpperCase())).toBe(0);
  });

  it("[V30] a model whose graph is fixed is told to ignore the list of what can be said", async () => {
    const fixed = piecesOf("m", {
      "graph/HCLr.fst": null,
      "graph/Gr.fst": null,
      "graph/HCLG.fst": openModel["graph/Gr.fst"] ?? "",
    });
    expect(await cli("add", write("m.zip", zip(fixed)))).toBe(0);
    expect(shelf.out.join("\n")).toContain("It ignores the list of what can be said");
  });

  it.each([
    ["--sample-frequency=8000\n", 8000],
    ["# --sample-frequency=8000\n--num-ceps=40", 16_000],
    ["--use-energy=false\n  --sample-frequency = 22050 # a comment", 22_050],
    ["", 16_000],
  ])("[V30] the settings %j name %i samples a second", (text, rate) => expect(sampleRateIn(text)).toBe(rate));
});
