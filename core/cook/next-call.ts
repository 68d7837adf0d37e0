import { minutes, plus, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Entry, RunSheet, Task } from "../plan/model.ts";
import { heldTasks } from "./hands.ts";
import { isReady } from "./ready.ts";
import type { Session } from "./session.ts";

/** A step is due this long before its minute on the run sheet: nobody waits for half a minute. */
export const callAhead = seconds(30);

/** A sheet entry with its task, for tasks that have not begun. */
export interface Upcoming {
  readonly task: Task;
  readonly entry: Entry;
}

/** What has not begun, in the order of the run sheet. */
export function upcoming(session: Session, sheet: RunSheet): readonly Upcoming[] {
  const tasks = new Map(session.tasks.map((task) => [task.id, task]));
  return sheet.entries.flatMap((entry) => {
    const task = tasks.get(entry.task);
    const waits = session.progress.get(entry.task)?.state === "waiting";
    return task !== undefined && waits ? [{ task, entry }] : [];
  });
}

/** What has not begun, may start, and is due at `now`. */
export function due(session: Session, sheet: RunSheet, now: Instant): readonly Upcoming[] {
  return upcoming(session, sheet).filter(
    ({ task, entry }) => entry.start <= plus(now, callAhead) && isReady(session, task, now),
  );
}

/** The steps to put before those who have nothing in hand, in the order of the sheet. */
export function callable(session: Session, sheet: RunSheet, now: Instant): readonly Task[] {
  const held = heldTasks(session);
  return due(session, sheet, now).flatMap(({ task }) => (held.includes(task.id) ? [] : [task]));
}

/**
 * The steps whose sound is worth fetching ahead: those that come up within `minutes(20)`,
 * four at the most.
 */
export function comingSteps(session: Session, sheet: RunSheet, now: Instant): readonly Task[] {
  const horizon = plus(now, minutes(20));
  return upcoming(session, sheet)
    .filter(({ entry }) => entry.start <= horizon)
    .slice(0, 4)
    .map(({ task }) => task);
}
