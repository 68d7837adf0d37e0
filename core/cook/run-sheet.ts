import { instant, later } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { PlanInput, RunSheet } from "../plan/model.ts";
import { plan } from "../plan/plan.ts";
import type { Session } from "./session.ts";

const minuteMs = 60_000;

/**
 * One sheet per session and minute. Every device floors `now` in the same way, so all of them
 * show the same sheet without sending it round.
 */
const sheets = new WeakMap<Session, { readonly at: Instant; readonly sheet: RunSheet }>();

/** The moment for which the sheet of `now` is planned. */
const plannedAt = (session: Session, now: Instant): Instant =>
  later(session.lastAt, instant(Math.floor(now / minuteMs) * minuteMs));

/** The run sheet for a session at a moment. */
export function runSheetOf(session: Session, now: Instant): RunSheet {
  const at = plannedAt(session, now);
  const known = sheets.get(session);
  if (known?.at === at) return known.sheet;
  const sheet = plan(planInputOf(session, at));
  sheets.set(session, { at, sheet });
  return sheet;
}

/** What the sheet of a moment is planned from. */
export function planInputOf(session: Session, now: Instant): PlanInput {
  return {
    meal: session.meal,
    tasks: session.tasks,
    progress: session.progress,
    ovens: session.ovens,
    now: plannedAt(session, now),
    since: session.lastAt,
    serveAt: session.serveAt,
    lull: session.lull,
    first: session.wishes,
    focus: session.focus?.task ?? null,
    helpers: session.helpers,
    handed: session.handed,
    ...(session.course === null ? {} : { course: session.course }),
  };
}
