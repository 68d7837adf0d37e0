import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express from "express";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { emptyHouseLog } from "../../core/house/house.ts";
import { leftoverId, type Leftover } from "../../core/house/leftover.ts";
import { dishId } from "../../core/recipe/model.ts";
import { days, instant, plus } from "../../core/units/quantity.ts";
import { ratio } from "../../core/units/rational.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { buyingRouter } from "../../server/web/buying-router.ts";
import { axeFindings, overflowOf } from "./screen/look-over.ts";
import { openPage, sizes, type OpenPage } from "./screen/open-page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let server: Server;

const now = instant(Date.now());
const soup: Leftover = {
  id: leftoverId("a"),
  name: "Smoky Lentil Soup",
  of: { session: "evening-1", dish: dishId("lentil-soup") },
  servingsOf: "bowls",
  rest: { kind: "servings", servings: ratio(3) },
  place: "fridge",
  storedAt: now,
  useBy: plus(now, days(2)),
  source: "leftovers",
  isKnown: true,
  heatedAt: null,
};

beforeAll(async () => {
  const book = await MealBook.open("recipes");
  const house = { ...emptyHouseLog.house, leftovers: new Map([[soup.id, soup]]) };
  const parts = { folder: "recipes", house: () => house };
  server = createServer(express().use(buyingRouter({ find: (wanted) => book.wanted(wanted), ...parts })));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/api/buying`;
  open = await openPage();
  await open.page.route("**/api/buying", async (route) => {
    const answer = await fetch(url, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: route.request().postData() ?? "",
    });
    return route.fulfill({ status: answer.status, json: (await answer.json()) as unknown });
  });
});
afterAll(async () => {
  await open.close();
  server.close();
});

const key = (name: string | RegExp) => open.page.getByRole("button", { name });

/** In the order of an evening: each goes on where the one before it stopped. */
describe("the buying list on the screen, and the fridge", () => {
  it("[W122] tells at the top what is in the fridge of the dishes, on the screen and on paper", async () => {
    const { start } = await scenes();
    await open.show(start);
    await key(/^Welcome Supper/).click();
    await key("What to buy").click();
    await open.page.locator(".buying-head").waitFor();
    const told =
      /3 bowls of smoky lentil soup are in the fridge until \w+day, .*: eat those first, or cook fewer\./;
    expect(await open.page.locator(".buying-head").innerText()).toMatch(told);
    for (const size of ["lying", "phone"] as const) {
      await open.page.setViewportSize({ width: sizes[size][0], height: sizes[size][1] });
      expect(await overflowOf(open.page)).toEqual([]);
    }
    expect(await axeFindings(open.page)).toEqual([]);
    await open.page.evaluate("window.dispatchEvent(new Event('beforeprint'))");
    expect(await open.page.locator(".list-dishes").textContent()).toMatch(told);
    await open.page.evaluate("window.dispatchEvent(new Event('afterprint'))");
  });

  it("[W122] a list that was kept before it told of the fridge is still there", async () => {
    await open.page.evaluate(`(() => {
      const kept = JSON.parse(localStorage.getItem("stovecall.buying"));
      delete kept.list.fridge;
      localStorage.setItem("stovecall.buying", JSON.stringify(kept));
    })()`);
    const { away } = await scenes();
    await open.show(away);
    await key(/^Your list for Welcome Supper/).click();
    await open.page.locator(".buying-line").first().waitFor();
    expect(await open.page.locator(".buying-head").innerText()).not.toContain("Left from before");
  });
});
