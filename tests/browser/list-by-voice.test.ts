import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo } from "./kitchen/talking-microphone.ts";

const data = mkdtempSync(join(tmpdir(), "list-by-voice-"));
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

const caption = async (): Promise<string> => (await stove.captions()).at(-1) ?? "";

/** In the order of an evening: each goes on where the one before it stopped. */
describe("the buying list by voice", () => {
  it("[W131] at the stove: a food of the meal is put on the list, and taken back", async () => {
    await beginMeal(stove);
    await speakTo(stove, "slt", "listen kitchen, we are out of cumin", /^on the list: .*cumin/);
    await expect.poll(caption).toMatch(/cumin is on the list\.$/i);
    await speakTo(stove, "rms", "listen kitchen, add the parsnips to the list", /^on the list: parsnips/);
    await expect.poll(caption).toBe("Parsnips are on the list.");
    await speakTo(stove, "slt", "listen kitchen, take parsnips off the list", /^off the list: parsnips/);
    await expect.poll(caption).toBe("Parsnips are off the list.");
  });

  it("[W132] where the list is open: it is read out and ticked, with an ear that was touched there", async () => {
    await typeSentence(stove, "end the meal");
    await stove.page.getByRole("button", { name: "Yes, it is over" }).click();
    await stove.page.getByRole("button", { name: "Cook something else" }).click();
    await stove.page.getByRole("button", { name: /^Your list for the house: 1 thing/ }).click();
    await stove.page.locator(".buying .ear").waitFor();
    await speakTo(stove, "rms", "listen kitchen, what is on the list", /^what to buy/);
    await expect.poll(caption).toMatch(/^One thing to buy\. Also wanted: .*cumin\.$/);
    await speakTo(stove, "slt", "listen kitchen, I have the cumin", /^in the bag: .*cumin/);
    await expect.poll(caption).toMatch(/in the bag\. That was the last one\.$/);
    expect(await stove.page.locator(".is-ticked b").count()).toBe(1);
    expect(stove.troubles).toEqual([]);
  });
});
