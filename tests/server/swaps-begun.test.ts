import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { parseEvent } from "../../core/cook/parse.ts";
import { beginMessage } from "../../core/sync/protocol.ts";
import { instant } from "../../core/units/quantity.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";

const book = await MealBook.open("recipes");
const porridge = { dish: "apple-porridge", ingredient: "raisins", use: "prunes" } as const;
const begin = { id: "b", meal: "fog-bell-breakfast", servings: {}, serveAt: null } as const;

let folder = "";
let store: SqliteMealStore;
let kitchen: Kitchen;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "swaps-begun-"));
  const database = openMealDatabase(folder);
  if (!database.ok) throw new Error(database.error.code);
  store = new SqliteMealStore(database.value, parseEvent);
  let ids = 0;
  const opened = Kitchen.open({
    store,
    meal: (id, servings) => book.meal(id, servings),
    now: () => instant(Date.UTC(2031, 4, 4, 7, 0)),
    newId: () => `id-${(ids += 1)}`,
  });
  if (!opened.ok) throw new Error(opened.error.code);
  kitchen = opened.value;
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

it("[D32] what was chosen on the card stands in the log from the meal's beginning", () => {
  expect(kitchen.begin({ ...begin, swaps: [porridge] })).toMatchObject({ ok: true });
  const { session } = appendEvents(emptyLog, kitchen.snapshot().events);
  const dish = session?.meal.dishes.find(({ id }) => id === porridge.dish);
  expect(dish?.ingredients.find(({ id }) => id === "raisins")?.item).toBe("prunes");
  expect(session?.swaps).toHaveLength(1);
});

it("[D32] what is not offered any more is refused in one sentence, and nothing is begun", () => {
  const swaps = [{ ...porridge, use: "pebbles" }];
  const refused = kitchen.begin({ ...begin, swaps });
  expect(refused.ok ? "" : refused.sentence).toMatch(/offers no pebbles any more/);
  expect(kitchen.cooking()).toBeNull();
  expect(beginMessage.safeParse({ ...begin, swaps: [{ dish: "a", ingredient: "b" }] }).success).toBe(false);
});
