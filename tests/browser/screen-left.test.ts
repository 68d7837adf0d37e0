import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { parseHouseEvent } from "../../core/house/parse.ts";
import { instant, minus, minutes, type Instant } from "../../core/units/quantity.ts";
import { Household } from "../../server/kitchen/household.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteHouseStore } from "../../server/store/sqlite-house-store.ts";
import { made, supper } from "../core/house/house-at.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { axeFindings, overflowOf, smallTargetsOf } from "./screen/look-over.ts";
import { sizes } from "./screen/open-page.ts";

const data = mkdtempSync(join(tmpdir(), "screen-left-"));
let server: ServerProcess;
let browser: Browser;
let kitchen: KitchenPage;

/** A meal of the last two hours that nobody has said a word about since. */
function noteAnEarlierMeal(): void {
  const now = (): Instant => instant(Date.now());
  const opened = openMealDatabase(data);
  if (!opened.ok) throw new Error(opened.error.code);
  const store = new SqliteHouseStore(opened.value, parseHouseEvent);
  const house = Household.open({ store, now, newId: () => "note" });
  if (!house.ok) throw new Error(house.error.code);
  const readyAt = minus(now(), minutes(95));
  const soup = made("soup", { name: "Tide soup", offHeatAt: readyAt, readyAt });
  house.value.note({ ...supper, dishes: [soup], begunAt: minus(readyAt, minutes(60)), endedAt: readyAt });
  opened.value.close();
}

beforeAll(async () => {
  noteAnEarlierMeal();
  server = await startServerProcess(data);
  browser = await startChromium("device");
  kitchen = await openKitchen(await browser.newContext({ reducedMotion: "reduce" }), server.url);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

/** What is wrong with the page as it stands, on the counter and in the hand, by day and by night. */
async function faults(): Promise<readonly string[]> {
  const { page } = kitchen;
  const found: string[] = [];
  for (const size of ["lying", "phone"] as const) {
    const [width, height] = sizes[size];
    await page.setViewportSize({ width, height });
    for (const look of ["light", "dark"] as const) {
      await page.evaluate(`document.documentElement.dataset.look = "${look}"`);
      found.push(...(await axeFindings(page)).map((one) => `${size}, ${look}: ${one}`));
    }
    found.push(...(await overflowOf(page)), ...(await smallTargetsOf(page, 48)));
  }
  return found;
}

const row = (dish: string) => kitchen.page.locator(".left-row", { hasText: dish });
const fridgeRow = (dish: string) => kitchen.page.locator(".fridge-row", { hasText: dish });

/** In the order of an evening: each goes on where the one before it stopped. */
describe("what is left, as the server's page shows it", () => {
  it("[W107] a reminder stands on the start page with its source; a touch silences it", async () => {
    const note = kitchen.page.locator(".left-due");
    await note.waitFor();
    expect(await note.innerText()).toMatch(/^Half an hour left of two out: cool the soup\..*USDA FSIS/s);
    expect(await faults()).toEqual([]);
    await kitchen.page.getByRole("button", { name: "No more reminders" }).click();
    await note.waitFor({ state: "detached" });
  });

  it("[W105] the closing card asks of each dish what is left; a touch puts it away, with its use-by and the source", async () => {
    await kitchen.page.locator("button.meal-face").waitFor();
    await beginMeal(kitchen);
    await typeSentence(kitchen, "end the meal");
    await kitchen.page.getByRole("button", { name: "Yes, it is over" }).click();
    await row("Pea Broth").waitFor();
    expect(await kitchen.page.locator(".left-row").count()).toBe(3);
    expect(await faults()).toEqual([]);
    await row("Pea Broth").getByRole("button", { name: "more" }).click();
    await kitchen.page.getByRole("button", { name: "Into the fridge: Pea Broth" }).click();
    await expect
      .poll(() => row("Pea Broth").innerText())
      .toMatch(/1 1\/2 bowls in the fridge, use by .*USDA FSIS/s);
    await kitchen.page.getByRole("button", { name: "All eaten: Oat Cakes" }).click();
    await expect.poll(() => row("Oat Cakes").innerText()).toMatch(/Nothing is left\./);
    const { lines } = await kitchen.watched();
    expect(lines.filter(({ how }) => how === "answer").map(({ text }) => text)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^One and a half bowls in the fridge, of broth\. Use it by /),
        "Nothing is left of the cakes.",
      ]),
    );
  });

  it("[W105] by voice as well: what is said on the closing card is carried out", async () => {
    await typeSentence(kitchen, "put one serving of the parsnips in the freezer");
    await expect.poll(() => row("Parsnip Tray").innerText()).toMatch(/1 plate in the freezer/);
    expect(await faults()).toEqual([]);
  });

  it("[W106] the start page shows it, the first to use first, also after it is loaded again", async () => {
    const { page } = kitchen;
    await page.getByRole("button", { name: "Cook something else" }).click();
    await page.reload();
    await fridgeRow("Pea Broth").waitFor();
    const names = await page.locator(".fridge-row b").allInnerTexts();
    expect(names).toEqual(["Pea Broth", "Parsnip Tray"]);
    expect(await page.locator(".use-first").innerText()).toMatch(/^Use first: Pea Broth, 1 1\/2 bowls, by /);
    expect(await faults()).toEqual([]);
  });

  it("[W106] eating, throwing away and undoing are a touch each", async () => {
    const { page } = kitchen;
    await page.getByRole("button", { name: "One eaten: Pea Broth" }).click();
    await expect.poll(() => fridgeRow("Pea Broth").innerText()).toMatch(/1\/2 bowl\b/);
    await page.getByRole("button", { name: "Thrown away: Parsnip Tray" }).click();
    await expect.poll(() => page.locator(".fridge-row").count()).toBe(1);
    await page.getByRole("button", { name: "Undo" }).click();
    await fridgeRow("Parsnip Tray").waitFor();
    expect(await faults()).toEqual([]);
    expect(kitchen.troubles).toEqual([]);
  });

  it("[W121] what is warmed up is a touch, first how much of it; then it is to be eaten now, and nothing of it stays", async () => {
    const { page } = kitchen;
    await page.getByRole("button", { name: "Warming up: Pea Broth" }).click();
    await expect.poll(() => page.getByRole("button", { name: /^Not now/ }).count()).toBe(0);
    await expect.poll(() => fridgeRow("Pea Broth").innerText()).toMatch(/Heated at .* [ap]m: eat it now/);
    expect(await fridgeRow("Pea Broth").innerText()).toMatch(/Two hours at most: USDA FSIS/);
    expect(await page.locator(".use-first").innerText()).toMatch(
      /^Eat now: Pea Broth, 1\/2 bowl, heated at /,
    );
    expect(await page.getByRole("button", { name: "Warming up: Pea Broth" }).count()).toBe(0);
    expect(await faults()).toEqual([]);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => fridgeRow("Pea Broth").innerText()).toMatch(/Use by /);
  });

  it("[W121] of more than a serving it is asked how much: so much is heated, the rest stays cold", async () => {
    const { page } = kitchen;
    // What was done before it: that one was eaten.
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => fridgeRow("Pea Broth").innerText()).toMatch(/1 1\/2 bowls/);
    await page.getByRole("button", { name: "Warming up: Pea Broth" }).click();
    expect(await faults()).toEqual([]);
    await page.getByRole("button", { name: "How much of it: less" }).click();
    await page.getByRole("button", { name: "Warming up 1 bowl: Pea Broth" }).click();
    await expect.poll(() => fridgeRow("Pea Broth").count()).toBe(2);
    const rows = await fridgeRow("Pea Broth").allInnerTexts();
    expect(rows[0]).toMatch(/1 bowl, heated\s*Heated at/);
    expect(rows[1]).toMatch(/1\/2 bowl\s*Use by /);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => fridgeRow("Pea Broth").count()).toBe(1);
  });

  it("[N116] with the server gone the fridge is known, and what is done waits for it", async () => {
    const { page } = kitchen;
    await server.kill();
    await page.locator(".notice-away").waitFor();
    await page.getByRole("button", { name: "All eaten: Pea Broth" }).click();
    await expect.poll(() => page.locator(".fridge-row").count()).toBe(1);
    server = await startServerProcess(data, server.port);
    await page.locator(".notice-away").waitFor({ state: "detached" });
    await page.reload();
    await fridgeRow("Parsnip Tray").waitFor();
    await expect.poll(() => page.locator(".fridge-row").count()).toBe(1);
  });
});
