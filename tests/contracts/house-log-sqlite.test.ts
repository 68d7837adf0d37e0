import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Database } from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { HouseEvent } from "../../core/house/events.ts";
import { leftoverId } from "../../core/house/leftover.ts";
import { parseHouseEvent } from "../../core/house/parse.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { storeSentence } from "../../server/store/meal-store.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteHouseStore } from "../../server/store/sqlite-house-store.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { doneInHouse, houseLogContract } from "./house-log.ts";
import { carriedOut, evening } from "./meal-log.ts";

let folder = "";
let opened: Database[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "house-log-"));
});
afterEach(() => {
  for (const one of opened) one.close();
  opened = [];
  rmSync(folder, { recursive: true, force: true });
});

function database(): Database {
  const database_ = openMealDatabase(join(folder, "var"));
  if (!database_.ok) throw new Error(storeSentence(database_.error));
  opened.push(database_.value);
  return database_.value;
}

const eaten = doneInHouse("c1", 1, { type: "LeftoverEaten", id: leftoverId("soup") });

describe("the household log in SQLite", () => {
  houseLogContract(() => new SqliteHouseStore(database(), parseHouseEvent));

  it("[L67] what was written is there after the file was closed and opened again", () => {
    const before = database();
    new SqliteHouseStore(before, parseHouseEvent).append(eaten);
    before.close();
    expect(new SqliteHouseStore(database(), parseHouseEvent).load()).toEqual(ok(eaten.events));
  });

  it("[L67] an event in the file can be neither changed nor deleted", () => {
    const file = database();
    new SqliteHouseStore(file, parseHouseEvent).append(eaten);
    expect(() => file.exec("UPDATE house_event SET at = 1")).toThrow(/only grows/);
    expect(() => file.exec("DELETE FROM house_event")).toThrow(/only grows/);
  });

  it("[L67] a file from before there was one is opened with all its evenings", () => {
    const file = database();
    const first = carriedOut("begin-1", 1, { type: "EverythingHeld" });
    const asStored = (stored: unknown): Result<never, string> => ok(stored as never);
    new SqliteMealStore(file, asStored).begin(evening, first);
    file.exec("DROP TABLE house_event; DROP TABLE house_command; PRAGMA user_version = 2");
    file.close();
    const again = database();
    expect(new SqliteMealStore(again, asStored).load(evening.session)).toEqual(ok(first.events));
    const store = new SqliteHouseStore(again, parseHouseEvent);
    expect(store.append(eaten)).toEqual(ok(null));
    expect(store.load()).toEqual(ok(eaten.events));
  });

  it("[L67] an event that cannot be read back damages the log rather than vanishing from it", () => {
    const file = database();
    new SqliteHouseStore(file, parseHouseEvent).append(eaten);
    const strict = new SqliteHouseStore(file, (): Result<HouseEvent, string> => err("its type is unknown"));
    const loaded = strict.load();
    expect(loaded.ok ? "" : storeSentence(loaded.error)).toMatch(
      /damaged \(event 1 of the house: its type is unknown\)/,
    );
  });
});
