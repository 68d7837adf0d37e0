import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express from "express";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { emptyHouseLog } from "../../core/house/house.ts";
import { leftoverId, type Leftover } from "../../core/house/leftover.ts";
import { dishId } from "../../core/recipe/model.ts";
import type { BuyingAnswer } from "../../core/sync/buying-request.ts";
import { hours, instant, plus } from "../../core/units/quantity.ts";
import { ratio } from "../../core/units/rational.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { buyingRouter } from "../../server/web/buying-router.ts";
import type { FindMeal } from "../../server/web/find-meal.ts";

let server: Server;
let url = "";
let house = emptyHouseLog.house;

beforeAll(async () => {
  const book = await MealBook.open("recipes");
  const find: FindMeal = (wanted) => book.wanted(wanted);
  const app = express();
  app.use("/", buyingRouter({ find, folder: "recipes", house: () => house }));
  app.use("/bare", buyingRouter({ find, folder: "/nowhere", house: () => house }));
  server = createServer(app);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
});

const supper = { meal: "welcome-supper", servings: { "lentil-soup": 8 } };

async function ask(
  body: unknown,
  headers: Record<string, string> = {},
  under = "",
): Promise<readonly [number, unknown]> {
  const answer = await fetch(`${url}${under}/api/buying`, {
    method: "POST",
    headers: { "content-type": "application/json", ...headers },
    body: JSON.stringify(body),
  });
  expect(answer.headers.get("cache-control")).toBe("no-store");
  return [answer.status, await answer.json()];
}

describe("the buying list from the server", () => {
  it("[B28] the page is told the list in words, for the servings that were chosen, less what is in the house", async () => {
    const [status, told] = await ask({ meals: [supper], house: "3 lemons\n@@" });
    const { list, mistakes } = told as BuyingAnswer;
    expect([status, list.title]).toEqual([200, "Welcome Supper"]);
    expect(list.dishes[0]).toBe("Smoky Lentil Soup, 8 bowls");
    const lines = list.sections.flatMap((section) => section.lines);
    expect(lines.find(({ name }) => name === "red lentils")).toEqual({
      id: "buy: dry red lentil",
      name: "red lentils",
      buy: "3 cups, about 580 g",
      note: "",
      shares: "for the soup",
    });
    expect(list.sections.find(({ kind }) => kind === "enough")?.lines.map(({ name }) => name)).toEqual([
      "lemon",
    ]);
    expect(mistakes.map(({ line }) => line)).toEqual([2]);
  });

  it("[B36] what is in the fridge is told at the top, as it is when the list is made", async () => {
    const now = instant(Date.now());
    const leftover: Leftover = {
      id: leftoverId("a"),
      name: "Smoky Lentil Soup",
      of: { session: "evening-1", dish: dishId("lentil-soup") },
      servingsOf: "bowls",
      rest: { kind: "servings", servings: ratio(3) },
      place: "fridge",
      storedAt: now,
      useBy: plus(now, hours(30)),
      source: "leftovers",
      isKnown: true,
      heatedAt: null,
    };
    house = { ...emptyHouseLog.house, leftovers: new Map([[leftover.id, leftover]]) };
    const [, told] = await ask({ meals: [supper], house: "" });
    expect((told as BuyingAnswer).list.fridge).toEqual([
      expect.stringMatching(
        /^3 bowls of smoky lentil soup are in the fridge until \w+day, .*: eat those first/,
      ),
    ]);
    house = emptyHouseLog.house;
    const [, then] = await ask({ meals: [supper], house: "" });
    expect((then as BuyingAnswer).list).toEqual({ ...(told as BuyingAnswer).list, fridge: [] });
  });

  it("[B28] several meals make one list", async () => {
    const [, told] = await ask({ meals: [supper, { meal: "slack-water-lunch", servings: {} }], house: "" });
    expect((told as BuyingAnswer).list.title).toBe("Welcome Supper and Slack Water Lunch");
  });

  it.each([
    ["no meal", { meals: [], house: "" }, 400],
    ["nothing at all", {}, 400],
    ["a stranger's field", { meals: [supper], house: "", more: 1 }, 400],
    [
      "half a serving",
      { meals: [{ meal: "welcome-supper", servings: { "lentil-soup": 0.5 } }], house: "" },
      400,
    ],
    ["an unknown meal", { meals: [{ meal: "brunch", servings: {} }], house: "" }, 404],
    ["an unknown dish", { meals: [{ meal: "welcome-supper", servings: { stew: 2 } }], house: "" }, 404],
  ])("[B29] %s is refused with a sentence", async (_, body, status) => {
    const [answered, told] = await ask(body);
    expect(answered).toBe(status);
    expect((told as { error: string }).error).toMatch(/^[A-Z].*[.]$/);
  });

  it("[B29] another site's page gets none, and without the tables there is none", async () => {
    expect(await ask({ meals: [supper], house: "" }, { origin: "http://evil.example" })).toEqual([
      403,
      { error: "The buying list is for Stovecall's own page. Open it there." },
    ]);
    expect((await ask({ meals: [supper], house: "" }, {}, "/bare"))[0]).toBe(503);
  });
});
