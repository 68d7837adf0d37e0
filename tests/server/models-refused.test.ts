import { createHash } from "node:crypto";
import { createWriteStream, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { usualLimits } from "../../server/models/limits.ts";
import { badArchives } from "./bad-archives-table.ts";
import { piecesOf, tarGz, zip } from "./invented-models.ts";
import { useShelf } from "./model-shelf.ts";

const shelf = useShelf();
const { cli, add, write, inModels } = shelf;
const sha256 = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("hex");

describe("a model that is refused", () => {
  it.each(badArchives)(
    "[V32] %s is one sentence, and nothing is left behind",
    async (_what, file, make, sentence) => {
      expect([await cli("add", write(file, await make())), shelf.out, inModels()]).toEqual([1, [], []]);
      expect(shelf.told.filter((text) => !/^(Checking|Packing)/.test(text))).toEqual([
        expect.stringMatching(sentence),
      ]);
    },
  );

  it("[V32] a folder with a link in it, and a name that leads nowhere", async () => {
    for (const { path, content } of piecesOf("m")) write(path, content ?? "");
    symlinkSync("/etc/passwd", join(shelf.folder, "m", "link"));
    expect(await add(join(shelf.folder, "m"))).toEqual({
      ok: false,
      error: expect.stringMatching(/^m holds a link/) as string,
    });
    expect(await add(join(shelf.folder, "nowhere"))).toEqual({
      ok: false,
      error: "There is no file or folder nowhere. Check its name.",
    });
    expect(inModels()).toEqual([]);
  });

  it("[V32] more than fits into the engine's memory", async () => {
    const limits = { ...usualLimits, unpackedBytes: 200 };
    const sentence = expect.stringMatching(/unpacks to more than 1 kB, too much for the engine/) as string;
    expect(await add(write("m.zip", zip(piecesOf("m"))), { limits })).toEqual({ ok: false, error: sentence });
    expect(await add(write("m.tgz", await tarGz(piecesOf("m"))), { limits })).toEqual({
      ok: false,
      error: sentence,
    });
  });

  it("[V32] a checksum that is wrong", async () => {
    const bytes = zip(piecesOf("m"));
    const wanted = "0".repeat(64);
    expect(await cli("add", write("m.zip", bytes), "--sha256", wanted)).toBe(1);
    expect([shelf.told, inModels()]).toEqual([
      [
        `The checksum of m.zip is wrong: it is ${sha256(bytes)}, and ${wanted} was asked for. It is not the file that you mean; fetch it anew.`,
      ],
      [],
    ]);
  });

  it("[V32] a disk that is full in the middle", async () => {
    // Every write to this device fails as on a full disk.
    const added = await add(write("m.zip", zip(piecesOf("m"))), {
      openTarget: () => createWriteStream("/dev/full"),
    });
    expect([added, inModels()]).toEqual([
      {
        ok: false,
        error: expect.stringMatching(/^The disk is full, so .*m\.zip was not written\. Make room/) as string,
      },
      [],
    ]);
  });

  it("[V32] a name that is taken: what is there stays", async () => {
    await add(write("m.zip", zip(piecesOf("m"))));
    const before = readFileSync(join(shelf.models, "m.tar.gz"));
    const again = await add(write("m.zip", zip(piecesOf("m", { README: "another" }))));
    expect(again).toEqual({
      ok: false,
      error: expect.stringMatching(/^There is already a m\.json in the models folder\./) as string,
    });
    expect([inModels(), readFileSync(join(shelf.models, "m.tar.gz"))]).toEqual([
      ["m.json", "m.tar.gz"],
      before,
    ]);
  });

  it("[V32] who stops it leaves nothing half done, and what a killed run left goes at the next one", async () => {
    const stopping = new AbortController();
    const added = await add(write("m.zip", zip(piecesOf("m"))), {
      signal: stopping.signal,
      tell: (words) => words.startsWith("Packing") && stopping.abort(),
    });
    expect([added, inModels()]).toEqual([
      { ok: false, error: expect.stringMatching(/^Stopped; /) as string },
      [],
    ]);
    // No process has this number: it is beyond what Linux gives out.
    writeFileSync(join(shelf.models, ".adding-99999999-m.tar.gz"), "half");
    expect((await add(write("m.zip", zip(piecesOf("m"))))).ok).toBe(true);
    expect(inModels()).toEqual(["m.json", "m.tar.gz"]);
  });

  it.each([
    [["lose"], 'models knows "add" and no "lose".'],
    [["add"], "Name what to add: models add FILE|FOLDER|URL"],
    [["add", "a", "b"], 'models add takes one model; "b" is one word too many.'],
    [
      ["add", "a", "--name", "../x"],
      '"../x" cannot be a name. Write letters, digits, points and dashes after --name.',
    ],
    [
      ["add", "a", "--sha256", "12"],
      "A SHA-256 checksum has 64 digits from 0 to 9 and a to f. Copy it whole after --sha256.",
    ],
    [["--name", "x"], '--name belongs to "models add".'],
    [["--loud"], "There is no option --loud."],
  ])("[V31] %j is misuse, told in one sentence", async (words, sentence) => {
    expect([await cli(...words), shelf.told, shelf.out]).toEqual([2, [sentence], []]);
  });
});
