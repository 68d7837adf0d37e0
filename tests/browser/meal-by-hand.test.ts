import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { readMealLog, told } from "./kitchen/meal-log.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";

const data = mkdtempSync(join(tmpdir(), "meal-by-hand-"));
let server: ServerProcess;
let browser: Browser;
let context: BrowserContext;
let kitchen: KitchenPage;

const happened = (): readonly string[] => told(readMealLog(data).events);

/** A person who says no: the browser's own refusal, given before the page asks. */
async function refuseMicrophone(page: Page): Promise<void> {
  const raw = await page.context().newCDPSession(page);
  const permission = { name: "microphone" };
  await raw.send("Browser.setPermission", {
    permission,
    setting: "denied",
    origin: new URL(server.url).origin,
  });
}

/** A machine without a microphone, whatever this one has. */
async function removeMicrophone(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const missing = (): Promise<MediaStream> =>
      Promise.reject(new DOMException("no device", "NotFoundError"));
    navigator.mediaDevices.getUserMedia = missing;
  });
}

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("refused");
  context = await browser.newContext();
  kitchen = await openKitchen(context, server.url, refuseMicrophone);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

describe("a meal cooked without a microphone", () => {
  it("[E7] a refused microphone is one sentence that says what to do; the meal begins all the same", async () => {
    await beginMeal(kitchen);
    const sentence =
      "The microphone is not allowed for this page. Allow it in the browser's address bar, then turn listening on.";
    await expect.poll(() => kitchen.captions(), { timeout: 30_000 }).toContain(sentence);
    await kitchen.page.getByRole("button", { name: "Cannot hear. Try to listen again" }).waitFor();
  });

  it("[E7] so is a missing one", async () => {
    const other = await openKitchen(context, server.url, removeMicrophone);
    await other.page.locator(".ear-button").click();
    await expect
      .poll(() => other.captions(), { timeout: 30_000 })
      .toContain(
        "No microphone was found. Plug one in, then turn listening on; typing and tapping work meanwhile.",
      );
    await other.page.close();
  });

  it("[E7] typing and touching cook the meal to the table", async () => {
    for (const sentence of [
      "chill the dough first",
      "it's in",
      "the broth is on",
      "the broth is done",
      "the dough is done",
    ]) {
      await typeSentence(kitchen, sentence);
    }
    await expect.poll(happened, { timeout: 15_000 }).toContain("TaskFinished oat-cakes/chill-the-dough");
    for (const sentence of [
      "the oven is on",
      "parsnips first",
      "done",
      "the parsnips are in",
      "the parsnips are done",
    ]) {
      await typeSentence(kitchen, sentence);
    }
    await touchToTheEnd(kitchen.page);
    expect(
      happened()
        .filter((line) => line.startsWith("TaskFinished"))
        .toSorted(),
    ).toEqual([
      "TaskFinished oat-cakes/chill-the-dough",
      "TaskFinished oat-cakes/fry-the-cakes#1",
      "TaskFinished oat-cakes/fry-the-cakes#2",
      "TaskFinished parsnip-tray/bake-the-parsnips",
      "TaskFinished parsnip-tray/season-the-parsnips",
      "TaskFinished pea-broth/simmer-the-broth",
    ]);
    expect(happened().at(-1)).toBe("MealEnded");
    expect(kitchen.troubles).toEqual([]);
  });
});

/**
 * Touches the plate's large key whenever it offers one, the next step where it says that the hands are free, and the
 * first answer to what is asked, until the closing page stands.
 */
async function touchToTheEnd(page: Page): Promise<void> {
  const done = page.getByText("Well cooked.");
  const answer = page.locator(".answers .key").first();
  const key = page.locator("main .key-main").first();
  const early = page
    .locator("main .key")
    .filter({ hasText: /^Now: / })
    .first();
  for (let touches = 0; touches < 40; touches += 1) {
    await done.or(answer).or(key).or(early).first().waitFor({ timeout: 60_000 });
    if (await done.isVisible()) return;
    const before = await page.locator("main").textContent();
    for (const next of [answer, key, early]) {
      if (!(await next.isVisible())) continue;
      await next.click();
      break;
    }
    const isElsewhere = async (): Promise<boolean> =>
      (await done.isVisible()) ||
      (await answer.isVisible()) ||
      (await page.locator("main").textContent()) !== before;
    await expect.poll(isElsewhere, { timeout: 10_000 }).toBe(true);
  }
  throw new Error(
    `40 touches did not bring the meal to the table: ${(await page.locator("main").textContent()) ?? ""}`,
  );
}
