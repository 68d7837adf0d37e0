import { lstat, readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { calendarMaker } from "../../core/plan/calendar.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such folder",
  ENOTDIR: "what should be its folder is a file",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "nothing can be written there",
  ENOSPC: "the disk is full",
  ENAMETOOLONG: "its name is too long",
};

function unwritten(path: string, problem: unknown): Result<never, string> {
  const code = problem instanceof Error && "code" in problem ? String(problem.code) : String(problem);
  return err(
    `The calendar file ${path} cannot be written: ${reasons[code] ?? code}. Name another after --calendar.`,
  );
}

/** What may not be written over: anything but a calendar file that we have made ourselves. */
async function obstacle(path: string): Promise<string | null> {
  const there = await stat(path);
  if (!there.isFile()) return `${path} is no ordinary file. Name another after --calendar.`;
  const text = await readFile(path, "utf8");
  return text.startsWith("BEGIN:VCALENDAR") && text.includes(calendarMaker)
    ? null
    : `${path} is there already and holds something else. Name another file after --calendar.`;
}

const isMissing = (problem: unknown): boolean =>
  problem instanceof Error && "code" in problem && problem.code === "ENOENT";

/**
 * Where to write: the path itself where nothing is yet, else the file that it leads to. Error: one sentence. A link
 * that leads nowhere is in the way as well, for a renamed file would take the link's own place.
 */
async function placeOf(path: string): Promise<Result<string, string>> {
  try {
    await lstat(path);
  } catch (problem) {
    if (isMissing(problem)) return ok(path);
    throw problem;
  }
  try {
    const inTheWay = await obstacle(path);
    return inTheWay === null ? ok(await realpath(path)) : err(inTheWay);
  } catch (problem) {
    if (isMissing(problem)) return err(`${path} leads nowhere. Name another after --calendar.`);
    throw problem;
  }
}

/**
 * Writes a calendar file: beside it first, then in its place, so that a full disk leaves the old one whole.
 * Error: one sentence; what was there is still there.
 */
export async function writeCalendar(path: string, text: string): Promise<Result<null, string>> {
  try {
    const place = await placeOf(path);
    if (!place.ok) return place;
    const beside = `${place.value}.${process.pid}.part`;
    try {
      await writeFile(beside, text, { flag: "wx" });
      await rename(beside, place.value);
    } catch (problem) {
      await rm(beside, { force: true });
      return unwritten(path, problem);
    }
    return ok(null);
  } catch (problem) {
    return unwritten(path, problem);
  }
}
