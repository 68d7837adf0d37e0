import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express from "express";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkMeal } from "../../core/diet/check.ts";
import { dietsIn, type FoodBook } from "../../core/diet/food-book.ts";
import { mealValues } from "../../core/food/values.ts";
import { openFoodBook, packFoodBook } from "../../core/sync/food-book-packed.ts";
import { packedFoodBook } from "../../core/sync/food-book-schema.ts";
import { err, ok } from "../../core/units/result.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { foodsRouter } from "../../server/web/foods-router.ts";

let server: Server;
let book: MealBook;
let url = "";

beforeAll(async () => {
  book = await MealBook.open("recipes");
  const lunch = book.meal("slack-water-lunch", {});
  const eaten = lunch.ok ? [{ daysAgo: 1, dishes: lunch.value.dishes }] : [];
  const app = express();
  app.use(
    "/",
    foodsRouter(() => book.foodBook(ok(eaten))),
  );
  app.use(
    "/bare",
    foodsRouter(() => Promise.resolve(err("The table of foods cannot be read; put it back."))),
  );
  server = createServer(app);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
});

async function fetched(): Promise<FoodBook> {
  const answer = await fetch(`${url}/api/foods`);
  expect(answer.headers.get("cache-control")).toBe("no-store");
  return openFoodBook(packedFoodBook.parse(await answer.json()));
}

describe("what is known of foods and diets, for the page", () => {
  it("[D45] comes to the page as the server has it: foods, groups, diets and what was eaten", async () => {
    const here = await book.foodBook(ok([]));
    if (!here.ok) throw new Error(here.error);
    const there = await fetched();
    expect(there.larder.foods).toEqual(here.value.larder.foods);
    expect(there.larder.groups).toEqual(here.value.larder.groups);
    expect(there.diets).toEqual(here.value.diets);
    expect(there.holding).toEqual(here.value.holding);
    expect(there.eaten.ok && there.eaten.value[0]?.dishes.length).toBeGreaterThan(0);
    const [rule] = there.diets.flatMap(({ foods }) => foods).filter(({ name }) => name.kind === "group");
    // The very group, not a copy: which of two groups is the narrower one hangs on it.
    expect([...there.larder.groups.values()]).toContain(rule?.name.kind === "group" ? rule.name.group : null);
  });

  it("[D45] the page finds the same values and the same answers as the server", async () => {
    const here = await book.foodBook(ok([]));
    const there = await fetched();
    for (const id of there.holding.keys()) {
      const meal = book.meal(id, {});
      const diets = dietsIn(there, id);
      if (!here.ok || !meal.ok || !diets.ok) throw new Error(id);
      const { larder } = here.value;
      expect(mealValues(meal.value, there.larder.foods)).toEqual(mealValues(meal.value, larder.foods));
      expect(checkMeal(meal.value, diets.value, there.larder, []).findings).toEqual(
        checkMeal(meal.value, diets.value, larder, []).findings,
      );
    }
  });

  it("[D46] a meal whose file is gone is held by no diet that anybody knows, and nobody says that it is allowed", async () => {
    expect(dietsIn(await fetched(), "gone-fishing")).toEqual(
      err("The file of this meal is gone, so nobody can tell which diets hold for it."),
    );
  });

  it("[D45] is for the cook's own page, and says what cannot be read", async () => {
    const stranger = await fetch(`${url}/api/foods`, { headers: { origin: "http://tide.example" } });
    expect(stranger.status).toBe(403);
    const bare = await fetch(`${url}/bare/api/foods`);
    expect([bare.status, await bare.json()]).toEqual([
      503,
      { error: "The table of foods cannot be read; put it back." },
    ]);
  });

  it("[D45] a diet that names what was not sent opens nothing", async () => {
    const here = await book.foodBook(ok([]));
    if (!here.ok) throw new Error(here.error);
    const packed = packedFoodBook.parse(JSON.parse(JSON.stringify(packFoodBook(here.value))));
    expect(() => openFoodBook({ ...packed, groups: [] })).toThrow("a diet names what was not sent");
  });
});
