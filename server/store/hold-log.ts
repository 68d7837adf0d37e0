import { join } from "node:path";
import SqliteDatabase, { type Database } from "better-sqlite3";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { StoreFailure } from "./meal-store.ts";
import { failureOf } from "./sqlite-failure.ts";

/**
 * Keeps a second server off the same meal log: each holds the log in memory and would write over the other.
 * The lock is the operating system's, on a file of its own, so that it ends with the process however that ends,
 * and so that others may still read the log.
 * @returns what lets go of it
 */
export function holdLog(folder: string): Result<() => void, StoreFailure> {
  const place = join(folder, "stovecall.lock");
  let lock: Database | null = null;
  try {
    lock = new SqliteDatabase(place, { timeout: 0 });
    lock.exec("BEGIN EXCLUSIVE");
    const held = lock;
    return ok(() => void held.close());
  } catch (problem) {
    lock?.close();
    const isHeld = problem instanceof SqliteDatabase.SqliteError && problem.code.startsWith("SQLITE_BUSY");
    return err(isHeld ? { code: "InUse", place: folder } : failureOf(problem, place));
  }
}
