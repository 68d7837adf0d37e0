import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { piecesOf, zip } from "../server/invented-models.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { VoskFramePage, type Burst } from "./kitchen/vosk-frame-page.ts";
import { addTo, addWhistle, offered, whistleShelf } from "./kitchen/whistle-shelf.ts";

const data = mkdtempSync(join(tmpdir(), "vosk-engine-"));
let browser: Browser;

beforeAll(async () => {
  browser = await startChromium("device");
});
afterAll(async () => {
  await browser.close();
  rmSync(data, { recursive: true, force: true });
});

/** 600 recognisers, or sentences, that were kept would weigh more in the page than this (bytes). */
const leastLeak = 300_000;

describe("the Vosk engine with a model that we made up", () => {
  let server: ServerProcess;
  let frame: VoskFramePage;
  let url = "";
  let fixedUrl = "";
  /** The right names and beginnings, and nothing that the engine can use. */
  let deafUrl = "";

  beforeAll(async () => {
    const shelf = await whistleShelf(data, "whistle", 10);
    server = await startServerProcess(join(data, "log-whistle"), 0, ["--models", shelf]);
    const deaf = join(data, "deaf.zip");
    writeFileSync(deaf, zip(piecesOf("deaf")));
    await addTo(shelf, deaf, "zz-deaf");
    await addWhistle(shelf, "yy-fixed", "fixed", 10);
    [url = "", fixedUrl = "", deafUrl = ""] = await offered(server);
    frame = await VoskFramePage.open(browser, server.url);
  });
  afterAll(async () => {
    await frame.close();
    await server.stop();
  });

  it("[V36] the frame tells how its loading goes", async () => {
    const said = await frame.load(url);
    const stages = said.map((one) => (one.kind === "loading" ? one.loading.stage : one.kind));
    expect([...new Set(stages)]).toEqual(["starting", "fetching", "unpacking", "loaded"]);
  });

  it("[V38] it hears what its list of words allows, and calls the rest chatter", async () => {
    await frame.listenFor(["okay kitchen", "okay", "kitchen"]);
    const sentence = await frame.say(
      ["quiet", 1000],
      ["low", 400],
      ["quiet", 300],
      ["high", 400],
      ["quiet", 1500],
    );
    expect(sentence.verdict).toMatchObject({ kind: "command", words: ["okay", "kitchen"] });
    const chatter = await frame.say(["low", 300], ["high", 300], ["quiet", 1500]);
    expect(chatter.verdict).toEqual({ kind: "none", why: "chatter" });
    const { lists } = await frame.held();
    expect(lists.map((list) => JSON.parse(list) as unknown)).toEqual([["okay", "kitchen", "[unk]"]]);
  });

  it("[V38] a pause that the engine takes for the end does not lose what was said before it", async () => {
    await frame.listenFor(["kitchen okay"], "okay");
    await frame.held();
    const begin: readonly Burst[] = [
      ["low", 400],
      ["quiet", 300],
      ["high", 400],
    ];
    const sentence = [...begin, ["quiet", 800], ["low", 400], ["quiet", 1500]] as const;
    for (let times = 0; times < 2; times++) {
      const { verdict } = await frame.saySlowly(["quiet", 500], ...sentence);
      expect(verdict).toMatchObject({ kind: "command", words: ["kitchen", "okay"], addressed: true });
    }
    // The engine ended each after two words, and counts on through all utterances; ours begin anew.
    const { finals } = await frame.held();
    expect(finals.map(({ length }) => length)).toEqual([2, 1, 2, 1]);
    const starts = finals.flat().map(({ start }) => start);
    expect(starts).toEqual(starts.toSorted((one, other) => one - other));
    expect(starts[3]).toBeGreaterThan(4);
  });

  it("[V38] a word that is not in the list is not heard", async () => {
    await frame.listenFor(["kitchen"]);
    expect((await frame.say(["quiet", 500], ["low", 400], ["quiet", 1500])).verdict.kind).toBe("none");
    expect((await frame.say(["high", 400], ["quiet", 1500])).verdict).toMatchObject({ words: ["kitchen"] });
  });

  it("[V38] a model with a fixed graph is loaded, and hears words that are not in the list", async () => {
    const fixed = await VoskFramePage.open(browser, server.url);
    expect((await fixed.load(fixedUrl)).at(-1)).toEqual({ kind: "loaded" });
    await fixed.listenFor(["kitchen"]);
    await fixed.say(["quiet", 500], ["low", 400], ["quiet", 1500]);
    expect((await fixed.held()).finals.flat().map(({ word }) => word)).toEqual(["okay"]);
    await fixed.close();
  });

  it("[V39] each recogniser that is made is removed, and a thousand of them leave the engine no larger", async () => {
    const change = async (times: number): Promise<void> => {
      for (let done = 0; done < times; done++) await frame.listenFor([done % 2 === 0 ? "okay" : "kitchen"]);
      expect((await frame.say(["low", 300], ["quiet", 1500])).verdict.kind).toBeDefined();
    };
    await change(50);
    const before = await frame.held();
    await change(1000);
    const after = await frame.held();
    expect(after.made - before.made).toBeGreaterThanOrEqual(1000);
    expect(after.made - after.removed).toBe(1);
    expect(after.engineBytes).toBe(before.engineBytes);
    expect(after.pageBytes - before.pageBytes).toBeLessThan(leastLeak);
  });

  it("[V39] an hour of sentences, one every six seconds, leaves the engine no larger", async () => {
    await frame.listenFor(["okay kitchen", "okay", "kitchen"]);
    const sentences = async (times: number): Promise<void> => {
      for (let done = 0; done < times; done++)
        await frame.say(["low", 400], ["quiet", 300], ["high", 400], ["quiet", 900]);
    };
    await sentences(50);
    const before = await frame.held();
    await sentences(600);
    const after = await frame.held();
    expect([after.engineBytes, after.made - before.made]).toEqual([before.engineBytes, 0]);
    expect(after.pageBytes - before.pageBytes).toBeLessThan(leastLeak);
  });

  it("[V39] the browser keeps the model that is used, and none that was replaced or cannot be used", async () => {
    const isOf = (address: string) => (file: string) =>
      file.startsWith(`/vosk/${address.replace(/\W/g, "_")}`);
    expect((await frame.kept()).length).toBeGreaterThan(5);
    expect((await frame.kept()).every(isOf(url))).toBe(true);
    const deaf = await VoskFramePage.open(browser, server.url);
    expect((await deaf.load(deafUrl)).at(-1)).toEqual({
      kind: "failed",
      sentence: "The Vosk model zz-deaf cannot be used (there is no model in it that the engine can read).",
    });
    expect(await deaf.kept()).toEqual([]);
    await deaf.page.reload();
    expect((await deaf.load(fixedUrl)).at(-1)).toEqual({ kind: "loaded" });
    await deaf.page.reload();
    expect((await deaf.load(url)).at(-1)).toEqual({ kind: "loaded" });
    expect((await deaf.kept()).every(isOf(url))).toBe(true);
    await deaf.close();
  });
});
