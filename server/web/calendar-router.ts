import { Router, type Request, type Response } from "express";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import { calendarOf } from "../../core/plan/calendar.ts";
import { calendarPath } from "../../core/sync/calendar-path.ts";
import type { CookedEvening } from "../kitchen/kitchen.ts";
import { isOwnPage } from "./own-host.ts";

function refuse(response: Response, status: 403 | 404, error: string): void {
  response.status(status).set("Cache-Control", "no-store").json({ error });
}

function answer(evening: CookedEvening | null, request: Request, response: Response): void {
  // A link on somebody else's page must not put a file of ours into the cook's downloads.
  if (!isOwnPage(request)) {
    refuse(response, 403, "The calendar file is for Stovecall's own page. Open it there.");
    return;
  }
  if (evening === null) {
    refuse(response, 404, "No meal is being cooked, so there is no calendar file. Begin one first.");
    return;
  }
  const { session, state, at } = evening;
  const { meal, tasks, serveAt } = state;
  const planned = { meal, tasks, serveAt, sheet: runSheetOf(state, at) };
  const text = calendarOf(planned, { stamp: at, uidBase: `${session}.stovecall` });
  response
    .set("Cache-Control", "no-store")
    .attachment(`${meal.id}.ics`)
    .set("Content-Type", "text/calendar; charset=utf-8")
    .send(Buffer.from(text));
}

/**
 * GET /api/calendar : the big moments of the evening being cooked as a calendar file, or `{ error }` with one sentence.
 * Source: RFC 5545, section 8.1, for the media type.
 */
export function calendarRouter(evening: () => CookedEvening | null): Router {
  const router = Router();
  router.get(calendarPath, (request, response) => answer(evening(), request, response));
  return router;
}
