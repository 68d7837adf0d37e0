import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo } from "./kitchen/talking-microphone.ts";

const data = mkdtempSync(join(tmpdir(), "words-by-voice-"));
let server: ServerProcess;
let browser: Browser;
let stove: KitchenPage;

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  stove = await openKitchen(await browser.newContext(), server.url, installTalkingMicrophone);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

describe("a word as the cook says it", () => {
  it("[V75] once it is taught, it is heard, understood as the recipe's own, and said back so", async () => {
    await beginMeal(stove);
    const key = (name: string | RegExp) => stove.page.getByRole("button", { name });
    await key(/^Kitchen$/).click();
    await stove.page.getByLabel("The word").fill("cumin");
    await stove.page.getByLabel("As you say it").fill("koo mean");
    await key("Teach it").click();
    await stove.page.keyboard.press("Escape");
    const asked: string[] = [];
    stove.page.on("request", (request) => asked.push(new URL(request.url()).searchParams.get("text") ?? ""));
    await speakTo(stove, "slt", "listen kitchen, how much koo mean in all", /cumin/);
    await expect.poll(() => asked.filter((text) => text.includes("koo mean")).length).toBeGreaterThan(0);
    expect((await stove.captions()).some((text) => text.includes("cumin"))).toBe(true);
    expect((await stove.captions()).filter((text) => text.includes("koo mean"))).toEqual([]);
    expect(stove.troubles).toEqual([]);
  });
});
