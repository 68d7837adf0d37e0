import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { parseEvent } from "../../core/cook/parse.ts";
import type { Snapshot } from "../../core/sync/protocol.ts";
import { minutes } from "../../core/units/quantity.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { CookedEvenings } from "./cooked-evenings.ts";

let folder = "";
let store: SqliteMealStore;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lull-"));
  const database = openMealDatabase(folder);
  if (!database.ok) throw new Error(database.error.code);
  store = new SqliteMealStore(database.value, parseEvent);
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const lullOf = ({ events }: Snapshot) => appendEvents(emptyLog, events).session?.lull;

describe("the wish for a lull before serving", () => {
  it("[N90] holds for the meals to come, until it is taken back", () => {
    const evenings = new CookedEvenings(store);
    evenings.cook(0, 5, { type: "SetLull", length: minutes(10) });
    evenings.cook(1, 5);
    expect(lullOf(evenings.begin(2))).toBe(minutes(10));
    evenings.give({ type: "SetLull", length: null });
    evenings.give({ type: "EndMeal" });
    expect(lullOf(evenings.begin(3))).toBeNull();
  });

  it("[N90] that was undone in its evening is none in the next", () => {
    const evenings = new CookedEvenings(store);
    evenings.cook(0, 5, { type: "SetLull", length: minutes(10) }, { type: "UndoLast" });
    expect(lullOf(evenings.begin(1))).toBeNull();
  });
});
