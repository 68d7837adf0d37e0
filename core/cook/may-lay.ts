import { compareEvenings, goesOnAs } from "../plan/better-course.ts";
import { isCourseOf } from "../plan/course.ts";
import { sheetCost } from "../plan/sheet-cost.ts";
import type { Instant } from "../units/quantity.ts";
import type { Call } from "./calls.ts";
import { callsNow, helperCalls } from "./calls-now.ts";
import { upcoming } from "./next-call.ts";
import { planInputOf, runSheetOf } from "./run-sheet.ts";
import type { MealLog, Session } from "./session.ts";

/** What a call wants of the cook, without its moment. */
function wanted(call: Call): readonly unknown[] {
  switch (call.kind) {
    case "ring":
      return [call.kind, call.timer.id, call.ring];
    case "attend":
      return [call.kind, call.moment.key];
    case "heat":
      return [call.kind, call.oven, call.heat];
    case "do":
    case "put-on":
    case "take-off":
      return [call.kind, call.task.id];
    case "wait":
    case "held":
    case "serve":
    case "ended":
      return [call.kind];
  }
}

/** All that wants the cook now, and what comes after it. */
function told(session: Session, at: Instant): string {
  const sheet = runSheetOf(session, at);
  const next = upcoming(session, sheet)[0]?.task.id ?? null;
  return JSON.stringify([[...callsNow(session, sheet, at), ...helperCalls(session)].map(wanted), next]);
}

/**
 * Whether a course may still be laid, given the log without it and with it: it is one of the evening's tasks, changes
 * nothing that has begun or been called, nor what the cook is told now or next, and makes the evening no worse.
 */
export function mayLay(log: MealLog, laid: MealLog, at: Instant): boolean {
  const [before, after] = [log.session, laid.session];
  if (before?.phase.state !== "cooking" || after === null || after.course === null) return false;
  if (!isCourseOf(after.course, after.tasks)) return false;
  const input = planInputOf(before, at);
  const [kept, other] = [runSheetOf(before, at), runSheetOf(after, at)];
  const isNoWorse = compareEvenings(sheetCost(input, other), sheetCost(input, kept)) <= 0;
  return isNoWorse && goesOnAs(input, other, kept) && told(before, at) === told(after, at);
}
