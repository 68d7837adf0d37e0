import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { piecesOf, tarGz, zip, type Piece } from "./invented-models.ts";
import { useShelf } from "./model-shelf.ts";

const shelf = useShelf();
const { cli, add, write } = shelf;

const folders = (top: string): readonly Piece[] =>
  ["", "/am", "/conf", "/graph", "/graph/phones"].map((path) => ({ path: `${top}${path}`, isFolder: true }));

describe("what lies in models/", () => {
  it("[V33] nothing: the page uses its own recogniser", async () => {
    writeFileSync(join(shelf.models, "README.md"), "about models");
    expect([await cli("--json"), shelf.out, shelf.told]).toEqual([
      0,
      [
        JSON.stringify({
          engine: "embedded",
          model: null,
          why: "There is no model here, so the page uses its own recogniser.",
        }),
      ],
      [],
    ]);
  });

  it("[V33] each is checked and told with its licence; the first by name is the one the page uses", async () => {
    await add(write("b.zip", zip(piecesOf("b"))));
    await add(write("c.zip", zip(piecesOf("c"))));
    writeFileSync(
      join(shelf.models, "c.json"),
      JSON.stringify({ licence: "x", sha256: "0".repeat(64), sampleRateHz: 16_000, source: "y" }),
    );
    writeFileSync(join(shelf.models, "d.json"), "{}");
    writeFileSync(join(shelf.models, "e.zip"), zip(piecesOf("e")));
    writeFileSync(join(shelf.models, "f.tar.gz"), zip(piecesOf("f")));
    writeFileSync(join(shelf.models, "g.tar.gz"), await tarGz(piecesOf("")));
    writeFileSync(join(shelf.models, "h.tgz"), await tarGz([...folders("h"), ...piecesOf("h")]));
    writeFileSync(join(shelf.models, "i.tgz"), await tarGz(piecesOf("i")));
    expect(await cli()).toBe(1);
    expect(shelf.out).toEqual([
      expect.stringMatching(
        /^b\.tar\.gz: right\. 1 kB; 16000 Hz; takes the list of what can be said; licence: ours; from b\.zip$/,
      ),
      "c.tar.gz: WRONG. c is not the file that its manifest was written for. Take both out, and add the model anew.",
      "d.json: WRONG. d.json has no model beside it. Take it out.",
      'e.zip: WRONG. The page does not use e.zip. Add it with "models add", then take it out.',
      'f.tar.gz: WRONG. f.tar.gz is a zip under another name. Take it out, and add it with "models add".',
      'g.tar.gz: WRONG. g.tar.gz does not hold its model in one top folder. Take it out, and add it with "models add".',
      expect.stringMatching(/^h\.tgz: right\. .*licence: not stated$/),
      'i.tgz: WRONG. i.tgz leaves out the entries of its folders, without which the engine cannot keep it. Take it out, and add it with "models add".',
      "The page uses b, because its name comes first.",
    ]);
  });

  it("[V33] a first one that is wrong: the page's own recogniser takes over, and that is said", async () => {
    writeFileSync(join(shelf.models, "a.tar.gz"), "no archive");
    await add(write("b.zip", zip(piecesOf("b"))));
    expect(await cli("--json")).toBe(1);
    const lines = shelf.out.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines.map(({ file, problem }) => [file, problem])).toEqual([
      ["a.tar.gz", "a.tar.gz is not an archive. Give a zip, a tar.gz or a folder."],
      ["b.tar.gz", null],
      [undefined, undefined],
    ]);
    expect(lines[2]).toEqual({
      engine: "embedded",
      model: null,
      why: "The page tries a first and cannot use it, so its own recogniser takes over. Take a.tar.gz out.",
    });
  });
});
