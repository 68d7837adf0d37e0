import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Watched } from "../../client/kitchen/watched.ts";
import type { Voice } from "../voice/synthetic-voices.ts";
import { unpacked } from "../core/speech/misheard/unpacked.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo, utterWhen } from "./kitchen/talking-microphone.ts";

const data = mkdtempSync(join(tmpdir(), "misheard-by-voice-"));
let server: ServerProcess;
let browser: Browser;
let context: BrowserContext;
let stove: KitchenPage;

type Watching = { stovecall?: () => Watched; sounds?: (number | null)[] };

/** These run in the page. */
const earWaits = (): boolean => (globalThis as Watching).stovecall?.().ear === "waiting";
const hasSpoken = (): boolean => {
  const watched = (globalThis as Watching).stovecall?.();
  return watched !== undefined && !watched.speaking && watched.ear === "waiting";
};
const earIsDeaf = (): boolean => (globalThis as Watching).stovecall?.().ear === "deaf";

/** Runs in the page: notes of every sentence that a worker tells how many samples of sound came with it. */
function noteSounds(): void {
  const sounds: (number | null)[] = [];
  (globalThis as Watching).sounds = sounds;
  type Told = { readonly kind?: unknown; readonly sound?: { readonly samples: Float32Array } | null };
  globalThis.Worker = class extends Worker {
    constructor(address: string | URL, options?: WorkerOptions) {
      super(address, options);
      this.addEventListener("message", ({ data }: MessageEvent<Told>) => {
        if (data.kind === "heard") sounds.push(data.sound?.samples.length ?? null);
      });
    }
  };
}

const sounds = (): Promise<readonly (number | null)[]> =>
  stove.page.evaluate(() => (globalThis as Watching).sounds ?? []);

/** What is in this browser's own store, counted; null where there is none at all. */
const stored = (): Promise<number | null> =>
  stove.page.evaluate<number | null>(`(async () => {
    const all = await indexedDB.databases();
    if (!all.some(({ name }) => name === "stovecall.misheard")) return null;
    const settled = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const opened = await settled(indexedDB.open("stovecall.misheard"));
    const count = await settled(opened.transaction("sounds").objectStore("sounds").count());
    opened.close();
    return count;
  })()`);

/** Says something until the ear has come to something; on a busy machine it may have to be said again. */
async function sayUntilHeard(voice: Voice, sentence: string): Promise<void> {
  const before = (await sounds()).length;
  for (let times = 1; times <= 3; times++) {
    await utterWhen(stove, voice, sentence, earWaits);
    for (let waited = 0; waited < 60; waited++) {
      if ((await sounds()).length > before) return;
      await stove.page.waitForTimeout(200);
    }
  }
  throw new Error(`"${sentence}" was said three times, and the ear came to nothing`);
}

/** Says something that no recipe has, after the address. */
const mumble = (): Promise<void> =>
  sayUntilHeard("slt", "listen kitchen, purple trumpets wander over the harbour");

const key = (name: string | RegExp) => stove.page.getByRole("button", { name });
const textsOf = (which: string) => stove.page.locator(which).allInnerTexts();

async function pullDrawer(): Promise<void> {
  await key(/^Kitchen$/).click();
  await key("Keep nothing").waitFor();
}

const putAway = (): Promise<void> => stove.page.keyboard.press("Escape");

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  context = await browser.newContext({ acceptDownloads: true });
  stove = await openKitchen(context, server.url, async (page) => {
    await page.addInitScript(noteSounds);
    await installTalkingMicrophone(page);
  });
  await beginMeal(stove);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

describe("the record of misheard sentences, by voice", () => {
  it("[V90] off, as it is at first: no sound leaves the worker, and the browser has no store", async () => {
    await speakTo(stove, "slt", "listen kitchen, what now", /^what now/);
    await mumble();
    const came = await sounds();
    expect(came.length).toBeGreaterThanOrEqual(2);
    expect(came.every((sound) => sound === null)).toBe(true);
    expect(await stored()).toBeNull();
  });

  it("[V91] [V92] on: a sentence that came to nothing after the address is kept, and other talk is not", async () => {
    await pullDrawer();
    await key("Keep what is misheard").click();
    await putAway();
    expect(await textsOf(".ear-keeps")).toEqual(["keeps what is misheard"]);
    await mumble();
    await expect.poll(stored, { timeout: 20_000 }).toBeGreaterThan(0);
    const [keptBefore, before] = [await stored(), (await sounds()).length];
    await sayUntilHeard("rms", "the purple trumpets wander over the harbour at night");
    expect((await sounds()).slice(before).every((sound) => sound === null)).toBe(true);
    expect(await stored()).toBe(keptBefore);
  });

  it("[V92] a command that the cook undoes is kept, and one that was right is not", async () => {
    const before = (await stored()) ?? 0;
    await speakTo(stove, "slt", "listen kitchen, what now", /^what now/);
    await speakTo(stove, "slt", "listen kitchen, set a timer for ninety seconds", /timer/);
    await typeSentence(stove, "undo that");
    await expect.poll(stored, { timeout: 20_000 }).toBeGreaterThan(before);
    await pullDrawer();
    await key(/^Listen to/).click();
    await stove.page.locator(".misheard-item").first().waitFor();
    const words = (await textsOf(".misheard-words")).map((text) => text.replaceAll(/\s+/g, " "));
    expect(words[0]).toMatch(/Heard “set a timer for ninety seconds” you took it back$/);
    expect(words.at(-1)).toMatch(/ came to nothing$/);
    expect(words.filter((text) => text.includes("what now"))).toEqual([]);
  });

  it("[V98] one is played to the end, and meanwhile nothing is heard", async () => {
    const fromCook = async (): Promise<readonly string[]> =>
      (await stove.watched()).lines.filter(({ who }) => who === "cook").map(({ text }) => text);
    const before = await fromCook();
    await stove.page.waitForFunction(earWaits, undefined, { timeout: 30_000 });
    const said = utterWhen(stove, "slt", "listen kitchen, what now", earIsDeaf);
    await key(/^Play: .*ninety/)
      .first()
      .click();
    await said;
    expect((await stove.watched()).ear).toBe("deaf");
    await stove.page.waitForFunction(earWaits, undefined, { timeout: 30_000 });
    await stove.page.waitForTimeout(3_000);
    expect(await fromCook()).toEqual(before);
    expect(await key(/^Stop: /).count()).toBe(0);
    expect(stove.troubles).toEqual([]);
  });

  it("[V93] [V95] one is corrected, and all outlive a reload", async () => {
    const all = await stored();
    await key(/^Correct: .*ninety/)
      .first()
      .click();
    expect((await textsOf(".misheard-correction li")).length).toBeGreaterThan(3);
    await key("set a timer for nineteen seconds").click();
    await expect
      .poll(() => textsOf(".misheard-meant"))
      .toEqual(["→ you said “set a timer for nineteen seconds”"]);
    await stove.page.reload();
    await pullDrawer();
    await key(/^Listen to/).click();
    await expect
      .poll(async () => (await textsOf(".misheard-tally li"))[0])
      .toBe("“set a timer for nineteen seconds” was misheard once.");
    expect(await stove.page.locator(".misheard-item").count()).toBe(all);
  });

  it("[W49] [V97] all are saved as one file, with their sound", async () => {
    const count = (await stored()) ?? 0;
    const [download] = await Promise.all([
      stove.page.waitForEvent("download"),
      key("Save all as one file").click(),
    ]);
    expect(download.suggestedFilename()).toBe("misheard-sentences.zip");
    const files = await unpacked(readFileSync(await download.path()));
    expect(files.size).toBe(1 + count);
    const lines = files.get("sentences.jsonl")?.toString("utf8");
    expect(lines).toContain('"meant":"set a timer for nineteen seconds"');
    for (const [name, wav] of files) {
      if (name === "sentences.jsonl") continue;
      // A second at least, twelve at most, of 16-bit samples at 16 kHz behind a header of 44 bytes.
      expect(wav.length).toBeGreaterThan(32_000);
      expect(wav.length).toBeLessThanOrEqual(44 + 12 * 32_000);
    }
    expect(stove.troubles).toEqual([]);
  });

  it("[W47] [V93] one is deleted with its sound, then all", async () => {
    const count = (await stored()) ?? 0;
    await key(/^Delete: .*ninety/)
      .first()
      .click();
    await expect.poll(stored).toBe(count - 1);
    await key("Delete all").click();
    await key("Yes, delete them").click();
    await expect.poll(stored).toBe(0);
    await putAway();
    await putAway();
  });

  it("[V94] a store that the browser refuses is one sentence, said once, and listening goes on", async () => {
    await stove.page.evaluate(() => {
      indexedDB.open = () => {
        throw new DOMException("denied", "SecurityError");
      };
    });
    await stove.page.locator(".ear-button").click();
    await stove.page.waitForFunction(earWaits, undefined, { timeout: 60_000 });
    const told = async (): Promise<number> =>
      (await stove.watched()).lines.filter(({ text }) => text.startsWith("This browser keeps nothing"))
        .length;
    await mumble();
    await expect.poll(told, { timeout: 20_000 }).toBe(1);
    // The caller says it, and two voices at once are another matter.
    await stove.page.waitForFunction(hasSpoken, undefined, { timeout: 20_000 });
    await mumble();
    await speakTo(stove, "slt", "listen kitchen, what now", /^what now/);
    expect(await told()).toBe(1);
  });
});
