import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo } from "./kitchen/talking-microphone.ts";
import { axeFindings, overflowOf, smallTargetsOf } from "./screen/look-over.ts";
import { sizes } from "./screen/open-page.ts";

const data = mkdtempSync(join(tmpdir(), "screen-served-"));
/** What the browser complains of, whether the page or one of its workers is to blame. */
const complaints: string[] = [];
let server: ServerProcess;
let browser: Browser;
let kitchen: KitchenPage;

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  const context = await browser.newContext({ reducedMotion: "reduce" });
  // A worker's failed request stands in the console, but only as a response does it reach us.
  context.on("response", (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} ${response.url()}`);
  });
  context.on("requestfailed", (request) => {
    const why = request.failure()?.errorText ?? "";
    // A page that is loaded again drops what it was fetching; that is nobody's fault.
    if (why !== "net::ERR_ABORTED") complaints.push(`${why} ${request.url()}`);
  });
  context.on("weberror", (error) => complaints.push(error.error().message));
  context.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  kitchen = await openKitchen(context, server.url, installTalkingMicrophone);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

/** What is wrong with the page as it stands, by day and by night, on the counter and in the hand. */
async function faults(): Promise<readonly string[]> {
  const { page } = kitchen;
  const found: string[] = [];
  for (const size of ["lying", "phone"] as const) {
    const [width, height] = sizes[size];
    await page.setViewportSize({ width, height });
    for (const look of ["light", "dark"] as const) {
      await page.evaluate(`document.documentElement.dataset.look = "${look}"`);
      const here = await axeFindings(page);
      found.push(...here.map((one) => `${size}, ${look}: ${one}`));
    }
    found.push(...(await overflowOf(page)), ...(await smallTargetsOf(page, 48)));
  }
  await page.setViewportSize({ width: sizes.lying[0], height: sizes.lying[1] });
  return found;
}

/** In the order of an evening: each goes on where the one before it stopped. */
describe("the pages as the server sends them", () => {
  it("[W1] [W5] the start page, and a meal picked", async () => {
    await kitchen.page.locator("button.meal-face").waitFor();
    expect(await faults()).toEqual([]);
    await kitchen.page.locator("button.meal-face").click();
    await kitchen.page.locator(".each summary").click();
    expect(await faults()).toEqual([]);
    await kitchen.page.locator("button.meal-face").click();
  });

  it("[W19] the recogniser loads and hears, and the console has nothing to complain of", async () => {
    await beginMeal(kitchen);
    const taken = await speakTo(kitchen, "slt", "listen kitchen, what next", /^what next/);
    expect(taken.line.understood).toBe("what next");
    expect(complaints).toEqual([]);
    expect(kitchen.troubles).toEqual([]);
  });

  it("[W19] loaded again in the middle of the meal it has no more to complain of", async () => {
    const { page } = kitchen;
    await page.reload();
    await page.locator(".cooking").waitFor();
    await page.locator(".ear-said", { hasText: "Oat" }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("[W1] [W5] a step with two timers", async () => {
    await typeSentence(kitchen, "set a timer for ten minutes for the tea");
    await typeSentence(kitchen, "set a timer for seventy minutes for the stock");
    await expect.poll(() => kitchen.page.locator(".tile").count()).toBe(2);
    expect(await faults()).toEqual([]);
  });

  it("[W1] [W14] a question open: which one, and whether really", async () => {
    await typeSentence(kitchen, "cancel the timer");
    await kitchen.page.locator("dialog .answers-which").waitFor();
    expect(await faults()).toEqual([]);
    await kitchen.page.keyboard.press("Escape");
    await kitchen.page.locator("dialog").waitFor({ state: "detached" });
    await typeSentence(kitchen, "cancel all timers");
    await kitchen.page.locator("dialog .answers-confirm").waitFor();
    expect(await faults()).toEqual([]);
    await kitchen.page.keyboard.press("Escape");
    await kitchen.page.locator("dialog").waitFor({ state: "detached" });
  });

  it("[W1] [W5] the drawer, a timer's sheet and the whole evening", async () => {
    const { page } = kitchen;
    await page.getByRole("button", { name: "Kitchen", exact: true }).click();
    await page.locator(".left-dish summary").first().click();
    expect(await faults()).toEqual([]);
    await page.keyboard.press("Escape");
    await page.locator(".tile-face").first().click();
    expect(await faults()).toEqual([]);
    await page.keyboard.press("Escape");
    await page.locator(".evening-open").click();
    await page.locator(".evening-scroll [role=group]").waitFor();
    expect(await faults()).toEqual([]);
    await page.keyboard.press("Escape");
  });

  it("[W1] [W5] the meal has ended", async () => {
    await typeSentence(kitchen, "end the meal");
    await kitchen.page.getByRole("button", { name: "Yes, it is over" }).click();
    await kitchen.page.locator(".closing").waitFor();
    expect(await faults()).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
