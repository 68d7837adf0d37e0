import { randomBytes } from "node:crypto";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addModel } from "../../server/models/add-model.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo } from "./kitchen/talking-microphone.ts";
import { VoskFramePage, type Burst } from "./kitchen/vosk-frame-page.ts";
import { piecesOf, zip } from "../server/invented-models.ts";
import { whistleModel } from "./kitchen/whistle-model.ts";

const data = mkdtempSync(join(tmpdir(), "vosk-"));
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

/** A models folder with one model of ours in it, added as a cook adds one. @param ballast bytes that make it heavy */
async function whistleShelf(name: string, ballast: number): Promise<string> {
  const folder = join(data, name);
  for (const [path, content] of Object.entries({
    ...whistleModel(),
    "graph/ballast.bin": randomBytes(ballast),
  })) {
    mkdirSync(join(folder, "whistle", path, ".."), { recursive: true });
    writeFileSync(join(folder, "whistle", path), content);
  }
  const shelf = join(folder, "models");
  const added = await addModel(
    { from: join(folder, "whistle"), name, licence: "ours", sha256: null },
    { modelsFolder: shelf, signal: new AbortController().signal, tell: () => undefined },
  );
  if (!added.ok) throw new Error(added.error);
  return shelf;
}

function write(folder: string, name: string, content: Buffer): string {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
}

async function offered(server: ServerProcess): Promise<readonly string[]> {
  const answer = (await (await fetch(new URL("/speech/models", server.url))).json()) as {
    readonly models: readonly { readonly url: string }[];
  };
  return answer.models.map(({ url }) => url);
}

describe("a Vosk model that is none", () => {
  let server: ServerProcess;
  let stove: KitchenPage;
  const wrong: string[] = [];
  const said = async (): Promise<string | undefined> =>
    (await stove.captions()).find((text) => text.startsWith("The Vosk"));

  beforeAll(async () => {
    const shelf = join(data, "none");
    mkdirSync(shelf);
    writeFileSync(join(shelf, "empty.tar.gz"), gzipSync(Buffer.alloc(1024)));
    server = await startServerProcess(join(data, "log-none"), 0, ["--models", shelf]);
    stove = await openKitchen(await browser.newContext(), server.url, installTalkingMicrophone);
    stove.page.on("console", (message) => {
      if (/Content Security Policy|EvalError/.test(message.text())) wrong.push(message.text());
    });
  });
  afterAll(async () => {
    await stove.page.context().close();
    await server.stop();
  });

  it("[V24] its engine starts in a frame of its own, and an archive that is no model is one sentence", async () => {
    await beginMeal(stove);
    await expect
      .poll(said, { timeout: 120_000 })
      .toMatch(/^The Vosk model empty cannot be used \(.+\), so the built-in recogniser listens instead\.$/);
    expect(wrong).toEqual([]);
    expect(stove.troubles).toEqual([]);
  });

  it("[V37] the built-in recogniser has taken over by itself, hears, and the cook is told once", async () => {
    await speakTo(stove, "slt", "okay kitchen, what now", /^what now/);
    expect((await stove.captions()).filter((text) => text.startsWith("The Vosk"))).toHaveLength(1);
    expect(await stove.page.locator("iframe").count()).toBe(0);
  });

  it("[V24] the cook goes on by typing", async () => {
    await typeSentence(stove, "when do we eat");
    await expect.poll(async () => (await stove.watched()).lines.at(-1)?.how).toBe("answer");
  });

  it("[V24] only that frame may make code from text", async () => {
    const policyOf = async (path: string): Promise<string> =>
      (await fetch(new URL(path, server.url))).headers.get("content-security-policy") ?? "";
    expect(await policyOf("/")).not.toContain("'unsafe-eval'");
    const frame = await policyOf("/vosk-frame.html");
    expect(frame).toContain("'unsafe-eval'");
    expect(frame).toContain("default-src 'none'");
  });
});

describe("a Vosk model that takes a while", () => {
  it("[V36] a bar with the bytes that have come stands beside the ear, then that it is unpacked; then the ear listens", async () => {
    const shelf = await whistleShelf("heavy", 30_000_000);
    const server = await startServerProcess(join(data, "log-heavy"), 0, ["--models", shelf]);
    const stove = await openKitchen(await browser.newContext(), server.url, async (page) => {
      await installTalkingMicrophone(page);
      await page.addInitScript(noteLoading);
    });
    await beginMeal(stove);
    await stove.page.waitForFunction(() => {
      const tell = (globalThis as { stovecall?: () => { readonly ear: string } }).stovecall;
      return ["waiting", "open"].includes(tell?.().ear ?? "");
    });
    const seen = await stove.page.evaluate(
      () => (globalThis as { loadingSeen?: readonly string[] }).loadingSeen ?? [],
    );
    const kinds = seen.map((text) =>
      text.replace(/^(\S+ the speech model), \d+\.\d MB of 30\.\d MB \[0\.\d+\]$/, "$1, bytes"),
    );
    expect([...new Set(kinds)].filter((kind) => !/\[1\]$/.test(kind))).toEqual([
      "Waking the recogniser [none]",
      "Bringing the speech model, bytes",
      "Unpacking the speech model [none]",
    ]);
    expect(stove.troubles).toEqual([]);
    expect((await stove.captions()).some((text) => text.startsWith("The Vosk"))).toBe(false);
    await stove.page.context().close();
    await server.stop();
  });
});

describe("the Vosk engine with a model that we made up", () => {
  let server: ServerProcess;
  let frame: VoskFramePage;
  let url = "";
  /** The right names and beginnings, and nothing that the engine can use. */
  let deafUrl = "";

  beforeAll(async () => {
    const shelf = await whistleShelf("whistle", 10);
    server = await startServerProcess(join(data, "log-whistle"), 0, ["--models", shelf]);
    await addModel(
      { from: write(data, "other.zip", zip(piecesOf("zz-deaf"))), name: null, licence: "ours", sha256: null },
      { modelsFolder: shelf, signal: new AbortController().signal, tell: () => undefined },
    );
    [url = "", deafUrl = ""] = await offered(server);
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
    const starts = finals.flat();
    expect(starts).toEqual(starts.toSorted((one, other) => one - other));
    expect(starts[3]).toBeGreaterThan(4);
  });

  it("[V38] a word that is not in the list is not heard", async () => {
    await frame.listenFor(["kitchen"]);
    expect((await frame.say(["quiet", 500], ["low", 400], ["quiet", 1500])).verdict.kind).toBe("none");
    expect((await frame.say(["high", 400], ["quiet", 1500])).verdict).toMatchObject({ words: ["kitchen"] });
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
    expect((await deaf.load(url)).at(-1)).toEqual({ kind: "loaded" });
    expect((await deaf.kept()).every(isOf(url))).toBe(true);
    await deaf.close();
  });
});

/** Runs in the page: keeps every text of the loading line with the share that its bar shows. */
function noteLoading(): void {
  const seen: string[] = [];
  (globalThis as { loadingSeen?: string[] }).loadingSeen = seen;
  const look = (): void => {
    const line = document.querySelector(".model-loading");
    if (line === null) return;
    const bar = line.querySelector("progress");
    const share = bar?.hasAttribute("value") === true ? String(Math.round(bar.value * 1000) / 1000) : "none";
    const text = `${line.textContent} [${share}]`;
    if (seen.at(-1) !== text) seen.push(text);
  };
  new MutationObserver(look).observe(document, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
  });
}
