import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone } from "./kitchen/talking-microphone.ts";

const data = mkdtempSync(join(tmpdir(), "vosk-"));
let server: ServerProcess;
let browser: Browser;
let stove: KitchenPage;
const wrong: string[] = [];

beforeAll(async () => {
  // No Vosk model can be had here: this one is an archive with nothing in it that the engine could use.
  writeFileSync(join(data, "empty.tar.gz"), gzipSync(Buffer.alloc(1024)));
  server = await startServerProcess(data, 0, ["--models", data]);
  browser = await startChromium("device");
  stove = await openKitchen(await browser.newContext(), server.url, installTalkingMicrophone);
  stove.page.on("console", (message) => {
    if (/Content Security Policy|EvalError/.test(message.text())) wrong.push(message.text());
  });
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

describe("a Vosk model in the models folder", () => {
  it("[V24] its engine starts in a frame of its own, and an archive that is no model is one sentence", async () => {
    await beginMeal(stove);
    await expect
      .poll(async () => (await stove.captions()).find((text) => text.startsWith("The Vosk")), {
        timeout: 120_000,
      })
      .toMatch(/^The Vosk model could not be (read|loaded)/);
    expect(wrong).toEqual([]);
    expect(stove.troubles).toEqual([]);
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
