import { earlier, plus, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Task } from "./model.ts";

/** When a task has the cook's hands until: its end, or the end of its first minute. */
export function handsUntil(task: Task, start: Instant, end: Instant): Instant {
  return task.step.hands === "on" ? end : earlier(end, plus(start, seconds(60)));
}
