import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";

const data = mkdtempSync(join(tmpdir(), "words-come-late-"));
/** The script that understands words, by its name in the build. */
const script = /\/assets\/words-[\w-]+\.js$/;
let server: ServerProcess;
let browser: Browser;
let kitchen: KitchenPage;
let isAway = true;
let fetches = 0;

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  const context = await browser.newContext();
  await context.route(script, (route) => {
    fetches += 1;
    return isAway ? route.abort() : route.continue();
  });
  kitchen = await openKitchen(context, server.url);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

const heard = async (): Promise<readonly string[]> =>
  (await kitchen.watched()).lines.flatMap(({ who, how, text, understood }) =>
    who === "cook" ? [`${how} "${text}": ${String(understood)}`] : [],
  );
const told = async (): Promise<number> =>
  (await kitchen.watched()).lines.filter(({ text }) => text.startsWith("I cannot understand words")).length;

/** In the order of an evening: each goes on where the one before it stopped. */
describe("a page whose words cannot be fetched", () => {
  it("[W96] it says so, and cooks on by touch", async () => {
    await expect.poll(told).toBe(1);
    await beginMeal(kitchen);
    await kitchen.page.locator(".plate button").first().click();
    await expect.poll(async () => (await heard()).length).toBe(1);
    expect((await heard())[0]).toMatch(/^touch "/);
  });

  it("[W97] an ear that is touched says what works without it", async () => {
    await expect.poll(async () => (await kitchen.watched()).ear, { timeout: 20_000 }).toBe("trouble");
    await kitchen.page
      .getByText("The ear could not be loaded. Touch it to try again; touching works.")
      .waitFor();
  });

  it("[W95] [W96] what is typed meanwhile is kept, and answered in its turn when they come", async () => {
    await typeSentence(kitchen, "set a timer for ten minutes");
    await typeSentence(kitchen, "how long is left");
    await expect.poll(told).toBe(3);
    expect(await heard()).toHaveLength(1);
    isAway = false;
    await expect.poll(async () => (await heard()).length, { timeout: 20_000 }).toBe(3);
    const [, first, second] = await heard();
    expect(first).toMatch(/^typed "set a timer for ten minutes": new timer/);
    expect(second).toMatch(/^typed "how long is left": how long/);
    expect(kitchen.troubles).toEqual([]);
  });

  it("[W95] loaded again, they are there before anything is said", async () => {
    fetches = 0;
    await kitchen.page.reload();
    await expect.poll(() => fetches).toBe(1);
    await kitchen.page.locator(".cooking").waitFor();
    await typeSentence(kitchen, "what next");
    await expect.poll(heard).toEqual([expect.stringMatching(/^typed "what next"/)]);
    expect(fetches).toBe(1);
  });
});
