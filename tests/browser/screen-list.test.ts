import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { axeFindings, overflowOf, smallTargetsOf } from "./screen/look-over.ts";
import { sizes } from "./screen/open-page.ts";

const data = mkdtempSync(join(tmpdir(), "screen-list-"));
let server: ServerProcess;
let browser: Browser;
let stove: KitchenPage;
let phone: KitchenPage;

const device = async (): Promise<KitchenPage> =>
  openKitchen(await browser.newContext({ reducedMotion: "reduce" }), server.url);

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  stove = await device();
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

/** What is wrong with the page as it stands, on the counter and in the hand, by day and by night. */
async function faults({ page }: KitchenPage): Promise<readonly string[]> {
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

const key = ({ page }: KitchenPage, name: string | RegExp) => page.getByRole("button", { name });
const caption = ({ page }: KitchenPage) => page.locator(".ear-said").innerText();
const row = ({ page }: KitchenPage, name: string) =>
  page.locator(".buying-line", { has: page.locator(`b:text-is("${name}")`) });
const ticked = ({ page }: KitchenPage) => page.locator(".is-ticked b").allInnerTexts();
const left = ({ page }: KitchenPage) => page.locator(".buying-for output").innerText();

/** In the order of a day: each goes on where the one before it stopped. */
describe("the buying list, as the server's page shows it", () => {
  it("[W126] what is wanted at the stove is on the list of another device, without a list for any meal", async () => {
    await stove.page.locator("button.meal-face").waitFor();
    await beginMeal(stove);
    await typeSentence(stove, "add lemons to the list");
    await expect.poll(() => caption(stove)).toBe("Lemons are on the list.");
    await typeSentence(stove, "put kitchen paper on the list");
    await typeSentence(stove, "add a lemon to the list");
    await expect.poll(() => caption(stove)).toBe("Lemons are on the list already.");
    await typeSentence(stove, "end the meal");
    await stove.page.getByRole("button", { name: "Yes, it is over" }).click();
    await stove.page.locator(".closing").waitFor();
    phone = await device();
    await key(phone, "Your list for the house: 2 things to buy").click();
    await row(phone, "lemons").waitFor();
    expect(await phone.page.locator(".buying-places h3").allInnerTexts()).toEqual(["Also wanted"]);
    expect(await faults(phone)).toEqual([]);
  });

  it("[W125] the ear stands where the list is open: what is typed there is answered there, and ticks it", async () => {
    await typeSentence(phone, "I have the lemons");
    await expect.poll(() => ticked(phone)).toEqual(["lemons"]);
    expect(await caption(phone)).toBe("Lemons are in the bag. One left.");
    await typeSentence(phone, "what is on the list");
    await expect.poll(() => caption(phone)).toBe("One thing to buy. Also wanted: kitchen paper.");
    await typeSentence(phone, "what now");
    await expect.poll(() => caption(phone)).toMatch(/^No meal is on/);
    await typeSentence(phone, "undo that");
    await expect.poll(() => ticked(phone)).toEqual([]);
    await phone.page.locator(".type-line input").press("Escape");
    expect(await phone.page.locator(".buying").count()).toBe(1);
  });

  it("[W127] a touch does the same for every device: buying, having it back, writing and clearing", async () => {
    await key(stove, "Cook something else").click();
    await key(stove, "Your list for the house: 2 things to buy").click();
    await row(phone, "kitchen paper").click();
    await expect.poll(() => ticked(stove)).toEqual(["kitchen paper"]);
    expect(await left(stove)).toBe("1 thing to buy");
    await row(stove, "kitchen paper").click();
    await expect.poll(() => ticked(phone)).toEqual([]);
    await stove.page.getByLabel("Something else to buy").fill("Candles");
    await key(stove, "Write it down").click();
    await row(phone, "Candles").waitFor();
    expect(await caption(stove)).toBe("Candles are on the list.");
    await row(phone, "lemons").click();
    await key(phone, "Clear the ticks").click();
    await expect.poll(() => row(stove, "lemons").count()).toBe(0);
    expect(await left(phone)).toBe("2 things to buy");
  });

  it("[W128] with a list for a meal it is one list: wanted things after the places, and one thing on one line", async () => {
    await key(stove, "Put away").click();
    await stove.page.locator("button.meal-face").click();
    await key(stove, "What to buy").click();
    await row(stove, "parsnips").waitFor();
    expect((await stove.page.locator(".buying-places h3").allInnerTexts()).at(-1)).toBe("Also wanted");
    await typeSentence(stove, "we are out of parsnips");
    await expect
      .poll(() => caption(stove))
      .toMatch(/^Parsnips are on the list already: .*for the parsnips\.$/);
    await row(phone, "parsnips").waitFor();
    await typeSentence(stove, "the parsnips are in the bag");
    await expect.poll(() => ticked(phone)).toEqual(["parsnips"]);
    expect(await row(stove, "parsnips").count()).toBe(1);
    expect(await faults(stove)).toEqual([]);
  });

  it("[W129] an answer about the list does not stand at the fridge", async () => {
    await typeSentence(stove, "what is on the list");
    await key(stove, "Put away").click();
    expect(await stove.page.locator(".fridge").count()).toBe(0);
    expect([stove.troubles, phone.troubles]).toEqual([[], []]);
  });

  it("[W130] with the server gone the list is written and ticked, and that reaches the others when it is back", async () => {
    await key(stove, /^Your list for Quick Shift Supper/).click();
    await row(stove, "Candles").waitFor();
    await server.kill();
    await stove.page.locator(".notice-away").waitFor({ state: "attached" });
    await stove.page.getByLabel("Something else to buy").fill("matches");
    await key(stove, "Write it down").click();
    await row(stove, "matches").waitFor();
    await row(stove, "Candles").click();
    server = await startServerProcess(data, server.port);
    await row(phone, "matches").waitFor();
    await expect.poll(() => ticked(phone)).toEqual(["Candles", "parsnips"]);
  });
});
