import { between, plus, seconds } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { Task } from "../plan/model.ts";
import type { Session } from "./session.ts";

/** What keeps a task from starting: another step still open, or a rest that is not over. */
export type Blocker =
  | { readonly kind: "open"; readonly title: string }
  | { readonly kind: "wait"; readonly wait: Seconds; readonly until: Instant };

/** The first thing that keeps `task` from starting at `now`; null when it may start. */
export function blockerOf(session: Session, task: Task, now: Instant): Blocker | null {
  for (const link of task.after) {
    const before = session.progress.get(link.task);
    if (before?.state === "skipped" || before === undefined) continue;
    if (before.state !== "done") {
      const title = session.tasks.find((one) => one.id === link.task)?.step.title ?? link.task;
      return { kind: "open", title };
    }
    const until = plus(before.at, link.atLeast);
    if (until > now) return { kind: "wait", wait: seconds(Math.ceil(between(now, until))), until };
  }
  return null;
}

/** Whether every step before it is over and rested. */
export const isReady = (session: Session, task: Task, now: Instant): boolean =>
  blockerOf(session, task, now) === null;

/** The last moment at which a waiting task may start by its maximum lags; null when any time will do. */
export function latestStart(session: Session, task: Task): Instant | null {
  const ends = task.after.flatMap((link) => {
    const before = session.progress.get(link.task);
    return link.atMost !== null && before?.state === "done" ? [plus(before.at, link.atMost)] : [];
  });
  return ends.length === 0 ? null : ends.reduce((a, b) => (a <= b ? a : b));
}
