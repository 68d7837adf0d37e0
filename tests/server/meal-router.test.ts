import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express from "express";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { cookingMealSchema } from "../../core/recipe/cooking-meal-schema.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { mealRouter } from "../../server/web/meal-router.ts";

let server: Server;
let book: MealBook;
let url = "";

beforeAll(async () => {
  book = await MealBook.open("recipes");
  const app = express();
  app.use(mealRouter((wanted) => book.wanted(wanted)));
  server = createServer(app);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
});

async function ask(body: unknown, headers: Record<string, string> = {}): Promise<readonly [number, unknown]> {
  const answer = await fetch(`${url}/api/meal`, {
    method: "POST",
    headers: { "content-type": "application/json", ...headers },
    body: JSON.stringify(body),
  });
  expect(answer.headers.get("cache-control")).toBe("no-store");
  return [answer.status, await answer.json()];
}

describe("a meal before it is begun", () => {
  it("[N125] comes to the page whole, with the servings that were chosen", async () => {
    const servings = { "lentil-soup": 8 };
    const [status, told] = await ask({ meal: "welcome-supper", servings });
    const here = book.meal("welcome-supper", servings);
    expect([status, { ok: true, value: cookingMealSchema.parse(told) }]).toEqual([200, here]);
    expect(here.ok && here.value.dishes[0]?.yield.servings).toBe(8);
  });

  it("[N125] and with what is taken for what; cautions for that come with it", async () => {
    const swap = { dish: "apple-porridge", ingredient: "raisins", use: "prunes" };
    const [status, told] = await ask({ meal: "fog-bell-breakfast", servings: {}, swaps: [swap] });
    const items = cookingMealSchema.parse(told).dishes.flatMap(({ ingredients }) => ingredients);
    expect([status, items.find(({ id }) => id === "raisins")?.item]).toEqual([200, "prunes"]);
    const [gone, why] = await ask({
      meal: "fog-bell-breakfast",
      servings: {},
      swaps: [{ ...swap, use: "pebbles" }],
    });
    expect([gone, Object.keys(why as object)]).toEqual([404, ["error"]]);
  });

  it("[N126] no meal, no sense, or a stranger's page: one sentence, and nothing else", async () => {
    const [gone, why] = await ask({ meal: "tide-supper", servings: {} });
    expect([gone, Object.keys(why as object)]).toEqual([404, ["error"]]);
    for (const odd of [
      {},
      { meal: "welcome-supper", servings: { "lentil-soup": 0 } },
      { meal: "", servings: {} },
    ])
      expect(await ask(odd)).toEqual([
        400,
        { error: "The server could not read which meal is meant. Reload the page." },
      ]);
    const wanted = { meal: "welcome-supper", servings: {} };
    expect(await ask(wanted, { origin: "http://tide.example" })).toEqual([
      403,
      { error: "The meals are for Stovecall's own page. Open them there." },
    ]);
  });
});
