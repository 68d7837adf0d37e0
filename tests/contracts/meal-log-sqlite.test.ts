import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Database } from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { MealEvent } from "../../core/cook/events.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { storeSentence } from "../../server/store/meal-store.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { carriedOut, evening, mealLogContract } from "./meal-log.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "meal-log-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const asStored = (stored: unknown): Result<MealEvent, string> => ok(stored as MealEvent);

function database(): Database {
  const opened = openMealDatabase(join(folder, "var"));
  if (!opened.ok) throw new Error(storeSentence(opened.error));
  return opened.value;
}

describe("the meal log in SQLite", () => {
  mealLogContract(() => new SqliteMealStore(database(), asStored));
});

describe("the meal log's file", () => {
  const first = carriedOut("begin-1", 1, { type: "EverythingHeld" });

  it("[L30] what was written is there after the file was closed and opened again", () => {
    const before = new SqliteMealStore(database(), asStored);
    before.begin(evening, first);
    before.close();
    const after = new SqliteMealStore(database(), asStored);
    expect(after.current()).toEqual(ok(evening));
    expect(after.load(evening.session)).toEqual(ok(first.events));
    after.close();
  });

  it("[L54] a file from before paces were known is opened with all its evenings", () => {
    const opened = database();
    new SqliteMealStore(opened, asStored).begin(evening, first);
    // As it was in the shape before: without the tables that came later.
    opened.exec("DROP TABLE house_event; DROP TABLE house_command");
    opened.exec("DROP TABLE pace_forgotten; PRAGMA user_version = 1");
    opened.close();
    const store = new SqliteMealStore(database(), asStored);
    expect(store.load(evening.session)).toEqual(ok(first.events));
    expect(store.paceForgottenAt()).toEqual(ok(null));
    store.close();
  });

  it("[L31] the folder is the cook's alone, and so is the file", () => {
    database().close();
    expect(statSync(join(folder, "var")).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder, "var", "stovecall.db")).mode & 0o777).toBe(0o600);
  });

  it("[L32] the log is kept in WAL, reaches the disk before an answer, and checks its references", () => {
    const opened = database();
    expect(opened.pragma("journal_mode", { simple: true })).toBe("wal");
    expect(opened.pragma("synchronous", { simple: true })).toBe(2);
    expect(opened.pragma("foreign_keys", { simple: true })).toBe(1);
    opened.close();
  });

  it("[L33] an event in the file can be neither changed nor deleted", () => {
    const opened = database();
    new SqliteMealStore(opened, asStored).begin(evening, first);
    expect(() => opened.exec("UPDATE event SET at = 1")).toThrow(/only grows/);
    expect(() => opened.exec("DELETE FROM event")).toThrow(/only grows/);
    opened.close();
  });

  it("[L34] on a full disk nothing of a command is kept, and it succeeds when there is room again", () => {
    const opened = database();
    const store = new SqliteMealStore(opened, asStored);
    store.begin(evening, first);
    opened.pragma(`max_page_count = ${Number(opened.pragma("page_count", { simple: true }))}`);
    const long = carriedOut("c2", 2, { type: "Undone", undoes: "x".repeat(100_000) });
    const refused = store.append(long);
    expect(refused).toEqual(err({ code: "DiskFull" }));
    expect(store.load(evening.session)).toEqual(ok(first.events));
    expect(store.outcomeOf(evening.session, "c2")).toEqual(ok(null));
    opened.pragma("max_page_count = 100000");
    expect(store.append(long)).toEqual(ok(null));
    store.close();
  });

  it("[L35] a log that may not be written can still be read, and says so in one sentence", () => {
    const opened = database();
    const store = new SqliteMealStore(opened, asStored);
    store.begin(evening, first);
    opened.pragma("query_only = 1");
    const refused = store.append(carriedOut("c2", 2, { type: "WentOn" }));
    expect(refused.ok ? "" : storeSentence(refused.error)).toMatch(
      /^The meal log .* may not be written; nothing was recorded\./,
    );
    expect(store.load(evening.session)).toEqual(ok(first.events));
    store.close();
  });

  it("[L36] a file that is no database is left as it is and refused with a sentence", () => {
    database().close();
    const place = join(folder, "var", "stovecall.db");
    writeFileSync(place, "once upon a time there was a soup".repeat(200));
    const opened = openMealDatabase(join(folder, "var"));
    expect(opened.ok ? "" : storeSentence(opened.error)).toMatch(/is damaged .*Move it away/);
    expect(statSync(place).size).toBe(33 * 200);
  });

  it("[L37] a file whose pages were overwritten is found at the start", () => {
    const store = new SqliteMealStore(database(), asStored);
    store.begin(evening, carriedOut("begin-1", 1, { type: "Undone", undoes: "x".repeat(50_000) }));
    store.close();
    const place = join(folder, "var", "stovecall.db");
    const size = statSync(place).size;
    writeFileSync(place, Buffer.alloc(size - 4096, 7), { flag: "r+" });
    const opened = openMealDatabase(join(folder, "var"));
    expect(opened).toMatchObject({ ok: false, error: { code: "Damaged" } });
  });

  it("[L38] an event that cannot be read back damages the log rather than vanishing from it", () => {
    const opened = database();
    new SqliteMealStore(opened, asStored).begin(evening, first);
    const strict = new SqliteMealStore(opened, () => err("its type is unknown"));
    const loaded = strict.load(evening.session);
    expect(loaded.ok ? "" : storeSentence(loaded.error)).toMatch(/damaged \(event 1: its type is unknown\)/);
    strict.close();
  });

  it("[L39] a file of a newer program is refused unchanged", () => {
    const opened = database();
    opened.pragma("user_version = 99");
    opened.close();
    const again = openMealDatabase(join(folder, "var"));
    expect(again).toMatchObject({ ok: false, error: { code: "NewerVersion" } });
  });

  it("[L40] a folder that cannot be made is refused with a sentence", () => {
    writeFileSync(join(folder, "file"), "");
    const opened = openMealDatabase(join(folder, "file", "var"));
    expect(opened.ok ? "" : storeSentence(opened.error)).toMatch(/cannot be opened .*--data/);
  });

  it("[L41] two programs on one file do not lose each other's events", () => {
    const one = new SqliteMealStore(database(), asStored);
    const two = new SqliteMealStore(database(), asStored);
    one.begin(evening, first);
    expect(() => two.append(carriedOut("c2", 1, { type: "WentOn" }))).toThrow(/cannot follow/);
    expect(two.append(carriedOut("c2", 2, { type: "WentOn" }))).toEqual(ok(null));
    expect(one.load(evening.session)).toMatchObject({ ok: true, value: { length: 2 } });
    one.close();
    two.close();
  });
});
