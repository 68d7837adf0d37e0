import SqliteDatabase from "better-sqlite3";
import type { StoreFailure } from "./meal-store.ts";

/** Codes of Node's own file calls that stand for the same trouble as one of SQLite's. */
const fileCodes: ReadonlyMap<string, "DiskFull" | "ReadOnly"> = new Map([
  ["ENOSPC", "DiskFull"],
  ["EDQUOT", "DiskFull"],
  ["EACCES", "ReadOnly"],
  ["EPERM", "ReadOnly"],
  ["EROFS", "ReadOnly"],
]);

function codeOf(problem: unknown): string {
  return problem instanceof Error && "code" in problem ? String(problem.code) : "";
}

/**
 * What a thrown disk trouble means. Source of the codes: SQLite's "Result and Error Codes", sqlite.org/rescode.html.
 * Throws again what is a bug of ours: a broken rule of the tables, a wrong statement, a plain exception.
 */
export function failureOf(problem: unknown, place: string): StoreFailure {
  const code = codeOf(problem);
  const known = fileCodes.get(code);
  if (known === "DiskFull") return { code: "DiskFull" };
  if (known === "ReadOnly") return { code: "ReadOnly", place };
  const detail = problem instanceof Error ? problem.message : String(problem);
  // ENOTDIR, EISDIR, EEXIST and the like: Node's file calls fail with names in E….
  if (/^E[A-Z]+$/.test(code)) return { code: "Unopened", place, detail };
  if (!(problem instanceof SqliteDatabase.SqliteError)) throw problem;
  if (code.startsWith("SQLITE_FULL")) return { code: "DiskFull" };
  if (code.startsWith("SQLITE_READONLY") || code.startsWith("SQLITE_PERM"))
    return { code: "ReadOnly", place };
  if (code.startsWith("SQLITE_CORRUPT") || code === "SQLITE_NOTADB") {
    return { code: "Damaged", place, detail };
  }
  if (code.startsWith("SQLITE_CANTOPEN")) return { code: "Unopened", place, detail };
  if (/^SQLITE_(IOERR|BUSY|LOCKED|NOMEM|NOLFS|PROTOCOL)/.test(code)) return { code: "Broken", detail };
  throw problem;
}
