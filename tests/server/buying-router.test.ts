import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express from "express";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BuyingAnswer } from "../../core/sync/buying-request.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { buyingRouter } from "../../server/web/buying-router.ts";

let server: Server;
let url = "";

beforeAll(async () => {
  const book = await MealBook.open("recipes");
  const app = express();
  app.use(
    "/",
    buyingRouter((id, servings) => book.meal(id, servings), "recipes"),
  );
  app.use(
    "/bare",
    buyingRouter((id, servings) => book.meal(id, servings), "/nowhere"),
  );
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
