import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { readMealLog, told } from "./kitchen/meal-log.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";

const data = mkdtempSync(join(tmpdir(), "meal-together-"));
let server: ServerProcess;
let browser: Browser;
let context: BrowserContext;
let kitchen: KitchenPage;

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("refused");
  context = await browser.newContext();
  kitchen = await openKitchen(context, server.url);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

const happened = (): readonly string[] => told(readMealLog(data).events);
const helperLine = () => kitchen.page.locator(".also .is-handed");
const handed = () =>
  readMealLog(data).events.flatMap(({ happening }) =>
    happening.type === "TaskHanded" ? [`${happening.helper} ${happening.task}`] : [],
  );

/** Whether the caller has said something that begins so. */
const wasSaid = async (words: string): Promise<boolean> =>
  (await kitchen.watched()).lines.some(({ text }) => text.startsWith(words));

describe("two who cook together", () => {
  it("[E12] begin together: each gets a step, the helper's is called by name and stands on every device", async () => {
    const { page } = kitchen;
    await page.locator("button.meal-face").click();
    await page.getByRole("button", { name: "Who cooks: more" }).click();
    await page.locator("button.key-light").click();
    await page.locator(".cooking").waitFor();
    await helperLine().waitFor();
    expect(happened()).toContain("HelperCame");
    expect(handed()).toEqual(["helper oat-cakes/chill-the-dough"]);
    await expect
      .poll(() => wasSaid("Helper, please. Cakes: Chill the dough."), { timeout: 30_000 })
      .toBe(true);
    const tablet = await openKitchen(context, server.url);
    await tablet.page.locator(".also .is-handed").waitFor();
    await tablet.page.close();
  });

  it("[E12] the helper says so when done; what the cook has before them stays", async () => {
    const mine = await kitchen.page.locator(".fit-words").textContent();
    await typeSentence(kitchen, "helper done");
    await expect.poll(happened, { timeout: 30_000 }).toContain("TaskStarted oat-cakes/chill-the-dough");
    expect(await kitchen.page.locator(".fit-words").textContent()).toBe(mine);
  });

  it("[E12] the helper is given a step by name, and leaves: it is told as not finished, and to do again", async () => {
    await typeSentence(kitchen, "let the helper do the broth");
    await helperLine().waitFor();
    await typeSentence(kitchen, "the helper has left");
    await helperLine().waitFor({ state: "detached" });
    await expect
      .poll(() => wasSaid("Just you again. Not finished: simmer the broth."), { timeout: 30_000 })
      .toBe(true);
    // The page answers at once; the log has it as soon as the server does.
    await expect.poll(happened).toContain("HelperLeft");
    expect(kitchen.troubles).toEqual([]);
  });
});
