import { mkdtempSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import express from "express";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { BuyingRequest } from "../../core/sync/buying-request.ts";
import { emptyHouseLog } from "../../core/house/house.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { buyingRouter } from "../../server/web/buying-router.ts";
import type { FindMeal } from "../../server/web/find-meal.ts";
import { overflowOf, smallTargetsOf } from "./screen/look-over.ts";
import { openPage, type OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let start: Scene;
let away: Scene;
let server: Server;
let folder = "";
let asked: BuyingRequest[] = [];
let isServerThere = true;

beforeAll(async () => {
  const all = await scenes();
  [start, away] = [all.start, all.away];
  folder = mkdtempSync(join(tmpdir(), "buying-"));
  const book = await MealBook.open("recipes");
  const { house } = emptyHouseLog;
  const find: FindMeal = (wanted) => book.wanted(wanted);
  server = createServer(express().use(buyingRouter({ find, folder: "recipes", house: () => house })));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/api/buying`;
  open = await openPage();
  await open.page.route("**/api/buying", async (route) => {
    if (!isServerThere) return route.abort();
    const body = route.request().postData() ?? "";
    asked.push(JSON.parse(body) as BuyingRequest);
    const answer = await fetch(url, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body,
    });
    return route.fulfill({ status: answer.status, json: (await answer.json()) as unknown });
  });
});
afterAll(async () => {
  await open.close();
  server.close();
  rmSync(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  [asked, isServerThere] = [[], true];
  if (open.page.url() !== "about:blank") await open.page.evaluate("localStorage.clear()");
});

const key = (name: string | RegExp) => open.page.getByRole("button", { name });
const row = (name: string) =>
  open.page.locator(".buying-line", { has: open.page.locator(`b:text-is("${name}")`) });
const namesIn = (place: string) =>
  open.page
    .locator(".buying-places section", { has: open.page.locator(`h3:text-is("${place}")`) })
    .locator("b")
    .allInnerTexts();
const settled = () =>
  open.page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");

/** The list for the first meal, as its card stands. */
async function shop(size: "lying" | "standing" | "phone" = "lying"): Promise<void> {
  await open.show(start, size);
  await key(/^Welcome Supper/).click();
  await key("What to buy").click();
  await row("garlic").waitFor();
}

describe("the buying list on the screen", () => {
  it("[W110] is made for the meal that is picked, with the servings that were chosen", async () => {
    await open.show(start);
    await key(/^Welcome Supper/).click();
    await key("For how many: more").click();
    await key("What to buy").click();
    await row("garlic").waitFor();
    const five = {
      "lentil-soup": 5,
      "cumin-carrots": 5,
      "griddle-flatbreads": 5,
      "cabbage-salad": 5,
      "ginger-pears": 5,
    };
    expect(asked.map(({ meals }) => meals)).toEqual([
      [{ meal: "welcome-supper", servings: five, swaps: [] }],
    ]);
    expect(await open.page.locator(".buying-places h3").allTextContents()).toEqual([
      "fruit and vegetables",
      "grains, beans and pasta",
      "tins and jars",
      "spices and dried herbs",
      "baking and sugar",
      "drinks",
      "if you like",
      "look whether there is enough",
    ]);
    expect(await row("garlic").innerText()).toMatch(
      /garlic 7 cloves, about three quarters of a head\s+3¾ cloves for the soup/,
    );
    expect(await open.page.locator(".buying").innerText()).toContain(
      "this list checks no diet and no allergy",
    );
  });

  it("[W110] other meals join it with a touch, and what is in the house comes off", async () => {
    await shop();
    await row("garlic").getByRole("checkbox").check();
    await row("lemons").getByRole("checkbox").check();
    await key(/^Slack Water Lunch$/).click();
    await open.page.locator(".buying-for", { hasText: "Welcome Supper and Slack Water Lunch" }).waitFor();
    expect(await row("garlic").innerText()).toContain("9 cloves, about a head");
    // More of it is wanted now, so it is not in the bag yet.
    expect(await open.page.getByRole("checkbox", { checked: true }).count()).toBe(0);
    await open.page.getByLabel("In the house already").fill("half a head of garlic\n5 lemons\n@@");
    await key("Take it off the list").click();
    await open.page.locator(".buying-choices [role=alert]").waitFor();
    expect(await open.page.locator(".buying-choices [role=alert]").innerText()).toMatch(/^Line 3: /);
    expect(await row("garlic").innerText()).toContain("4 cloves, about half a head");
    expect(await namesIn("enough in the house")).toEqual(["lemon"]);
    expect(asked.at(-1)?.meals.map(({ meal }) => meal)).toEqual(["welcome-supper", "slack-water-lunch"]);
  });

  it("[W111] a touch anywhere on a line ticks it; it sinks in its place, and another touch has it back", async () => {
    await shop("phone");
    const before = await namesIn("fruit and vegetables");
    const box = await row("carrots").boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(72);
    await row("carrots").click({ position: { x: 200, y: 20 } });
    expect(await namesIn("fruit and vegetables")).toEqual([
      ...before.filter((name) => name !== "carrots"),
      "carrots",
    ]);
    expect(await open.page.locator(".buying-for output").innerText()).toMatch(/^\d+ things to buy$/);
    await row("carrots").click();
    expect(await namesIn("fruit and vegetables")).toEqual(before);
  });

  it("[W165] on a tablet a long place leaves no hole: the columns end within a place of each other", async () => {
    await shop();
    const ends = await open.page.evaluate<readonly number[]>(`(() => {
      const all = [...document.querySelectorAll(".buying-places section")].map((one) => one.getBoundingClientRect());
      const endOf = (x) => Math.max(...all.filter(({ left }) => left === x).map(({ bottom }) => bottom));
      return [...new Set(all.map(({ left }) => left))].map(endOf);
    })()`);
    expect([ends.length, Math.max(...ends) - Math.min(...ends) < 3 * 72]).toEqual([2, true]);
  });

  it("[W111] a place that is done sinks below the others", async () => {
    await shop();
    await row("apple juice").click();
    await row("red lentils").click();
    const places = await open.page.locator(".buying-places h3").allTextContents();
    expect(places.slice(-2)).toEqual(["grains, beans and pasta", "drinks"]);
    await key("Clear the ticks").click();
    await settled();
    await open.page.locator(".buying-places h3 >> nth=1", { hasText: "grains" }).waitFor();
    expect(await open.page.getByRole("checkbox", { checked: true }).count()).toBe(0);
  });

  it("[W112] it is ticked without the server, and is still there after the page was loaded anew", async () => {
    await shop("phone");
    isServerThere = false;
    await row("garlic").click();
    await row("apple").click();
    await open.show(away, "phone");
    await key(/^Your list for Welcome Supper: \d+ things to buy$/).click();
    await row("garlic").waitFor();
    expect(await open.page.locator(".is-ticked b").allInnerTexts()).toEqual(["apple", "garlic"]);
  });

  it("[W112] where no list can be made it says so, and the one that was made stays", async () => {
    await shop();
    isServerThere = false;
    await key(/^Slack Water Lunch$/).click();
    await open.page.locator(".buying > [role=alert]").waitFor();
    expect(await open.page.locator(".buying > [role=alert]").innerText()).toContain(
      "The server does not answer",
    );
    expect(await row("garlic").count()).toBe(1);
  });

  it("[W112] what cannot be a list that was kept is as if there were none", async () => {
    for (const broken of ["{", "[]", '{"id":"a","list":{"sections":[{}]}}']) {
      await open.show(start);
      await open.page.evaluate((text) => localStorage.setItem("stovecall.buying", text), broken);
      await open.show(start);
      await settled();
      expect(await key(/^Your list for/).count()).toBe(0);
    }
    await shop();
  });

  it("[W112] what the cook writes on it is ticked like the rest, and goes over to the next list until it is", async () => {
    await shop();
    for (const thing of ["kitchen paper", "candles", " kitchen  paper "]) {
      await open.page.getByLabel("Something else to buy").fill(thing);
      await key("Write it down").click();
    }
    expect(await namesIn("also wanted")).toEqual(["kitchen paper", "candles"]);
    await row("candles").click();
    await key("Clear the ticks").click();
    await open.page.locator(".buying:not(:has(.is-ticked))").waitFor();
    expect(await namesIn("also wanted")).toEqual(["kitchen paper"]);
    await key("Throw the list away").click();
    expect([await open.page.locator(".buying").count(), await key(/^Your list for/).count()]).toEqual([0, 0]);
  });

  it("[W113] is printed on one page of A4 in black on white, with boxes, in letters of seven points at least", async () => {
    await shop();
    await row("garlic").click();
    await open.page.getByLabel("Something else to buy").fill("kitchen paper");
    await key("Write it down").click();
    for (const more of [null, "Slack Water Lunch", "Fog Bell Breakfast"] as const) {
      if (more !== null) {
        await open.page.getByRole("button", { name: more, exact: true }).click();
        await open.page.locator(".buying-for", { hasText: more }).waitFor();
      }
      const pdf = await open.page.pdf({ preferCSSPageSize: true });
      const pages = [...pdf.toString("latin1").matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      expect(pages.map(([, wide, high]) => [Math.round(Number(wide)), Math.round(Number(high))])).toEqual([
        [595, 842],
      ]);
      await open.page.emulateMedia({ media: "print" });
      await open.page.evaluate("window.dispatchEvent(new Event('beforeprint'))");
      const lines = await open.page.locator(".buying-line").count();
      expect(await open.page.locator(".list-paper li").count()).toBe(lines);
      const least = await open.page
        .evaluate<number>(`Math.min(...[...document.querySelectorAll(".list-paper *")]
        .filter((one) => [...one.childNodes].some((child) => child.nodeType === 3 && child.data.trim() !== ""))
        .map((one) => Number.parseFloat(getComputedStyle(one).fontSize) * 0.75))`);
      expect(Math.round(least * 100) / 100).toBeGreaterThanOrEqual(7);
      const out = await open.page.evaluate<readonly string[]>(`(() => {
        const page = document.querySelector(".list-paper").getBoundingClientRect();
        return [...document.querySelectorAll(".list-paper li, .list-paper footer")].flatMap((one) => {
          const box = one.getBoundingClientRect();
          return box.left < page.left - 1 || box.right > page.right + 1 || box.bottom > page.bottom + 1 ? [one.textContent] : [];
        });
      })()`);
      expect(out).toEqual([]);
      await open.page.evaluate("window.dispatchEvent(new Event('afterprint'))");
      await open.page.emulateMedia({ media: null });
    }
  });

  it("[W114] in every look and size: nothing that axe finds, nothing too wide, every target large", async () => {
    await shop();
    await row("garlic").click();
    await open.page.getByLabel("In the house already").fill("3 lemons\n@@\nhalf an elephant");
    await key("Take it off the list").click();
    await open.page.locator(".buying-choices [role=alert]").first().waitFor();
    expect(await open.lookedOver()).toEqual([]);
  });

  it("[W114] saved as a file it works on any device without a network, and keeps its ticks", async () => {
    await shop();
    const waiting = open.page.waitForEvent("download");
    await key("Save it for the phone").click();
    const download = await waiting;
    expect(download.suggestedFilename()).toBe("what-to-buy.html");
    const file = join(folder, "what-to-buy.html");
    await download.saveAs(file);
    const phone = await open.page.context().browser()?.newContext({ offline: true });
    if (phone === undefined) throw new Error("there is no browser");
    const page = await phone.newPage();
    const failures: string[] = [];
    page.on("pageerror", (error) => failures.push(error.message));
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(pathToFileURL(file).href);
    const garlic = page.locator("li", { has: page.locator('b:text-is("garlic")') });
    await garlic.locator("label").click();
    expect((await garlic.boundingBox())?.y).toBeGreaterThan(
      (await page.locator("li", { hasText: "yellow onion" }).boundingBox())?.y ?? 9e9,
    );
    await page.reload();
    expect(await page.locator("li:has(:checked) b").allInnerTexts()).toEqual(["garlic"]);
    expect(await overflowOf(page)).toEqual([]);
    expect((await smallTargetsOf(page, 30)).length).toBe(0);
    expect(
      await page.evaluate("[...document.querySelectorAll('label')].every((one) => one.offsetHeight >= 48)"),
    ).toBe(true);
    expect([failures, await page.locator("li").count()]).toEqual([
      [],
      await open.page.locator(".buying-line").count(),
    ]);
    await phone.close();
  });
});
