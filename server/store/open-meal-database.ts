import { chmodSync, closeSync, mkdirSync, openSync } from "node:fs";
import { join } from "node:path";
import SqliteDatabase, { type Database } from "better-sqlite3";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { StoreFailure } from "./meal-store.ts";
import { migrate } from "./migrations.ts";
import { failureOf } from "./sqlite-failure.ts";

/** The name of the meal log's file in its folder. */
const fileName = "stovecall.db";

/** The file that the meal log is in. */
export const mealLogIn = (folder: string): string => join(folder, fileName);

/** The folder is the cook's alone (mode 0700) when it is made here; one that exists keeps its mode. */
function makePlace(folder: string): string {
  const place = mealLogIn(folder);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  // SQLite gives its journal files the mode of the main file, so that one is made first.
  closeSync(openSync(place, "a", 0o600));
  chmodSync(place, 0o600);
  return place;
}

/**
 * Opens (or makes) the meal log in a folder and brings it to the newest shape.
 * FULL: a command that was acknowledged has reached the disk, whatever happens to the machine next.
 * Failures: the folder or file cannot be had, is damaged, or belongs to a newer program.
 */
export function openMealDatabase(folder: string): Result<Database, StoreFailure> {
  const place = mealLogIn(folder);
  let database: Database | null = null;
  try {
    makePlace(folder);
    database = new SqliteDatabase(place, { timeout: 2000 });
    database.pragma("journal_mode = WAL");
    database.pragma("synchronous = FULL");
    database.pragma("foreign_keys = ON");
    const health = String(database.pragma("quick_check(1)", { simple: true }));
    if (health !== "ok") return refuse(database, { code: "Damaged", place, detail: health });
    if (!migrate(database)) return refuse(database, { code: "NewerVersion", place });
    return ok(database);
  } catch (problem) {
    const failure = failureOf(problem, place);
    return refuse(database, failure.code === "Broken" ? { ...failure, code: "Unopened", place } : failure);
  }
}

function refuse(database: Database | null, failure: StoreFailure): Result<Database, StoreFailure> {
  database?.close();
  return err(failure);
}
