import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { defaultAddress } from "../../server/cli/default-address.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo } from "./kitchen/talking-microphone.ts";
import { whistleShelf } from "./kitchen/whistle-shelf.ts";

const data = mkdtempSync(join(tmpdir(), "vosk-"));
let browser: Browser;

beforeAll(async () => {
  browser = await startChromium("device");
});
afterAll(async () => {
  await browser.close();
  rmSync(data, { recursive: true, force: true });
});

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
    await speakTo(stove, "slt", `${defaultAddress}, what now`, /^what now/);
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
    const shelf = await whistleShelf(join(data, "heavy"), "heavy", 30_000_000);
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
      text.replace(/^(\S+ the speech model), \d+\.\d MB of 30\.\d MB \[0(?:\.\d+)?\]$/, "$1, bytes"),
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
