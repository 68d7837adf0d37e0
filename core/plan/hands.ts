import { earlier, plus, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { PlanInput, Task, TaskId } from "./model.ts";

/** When a task has somebody's hands until: its end, or the end of its first minute. */
export function handsUntil(task: Task, start: Instant, end: Instant): Instant {
  return task.step.hands === "on" ? end : earlier(end, plus(start, seconds(60)));
}

/** How many pairs of hands there are. */
export const cooksAt = ({ helpers }: Pick<PlanInput, "helpers">): number => 1 + helpers.length;

/** What the cook and the helpers have in hand, the cook's first. */
export function inHands({ focus, helpers }: Pick<PlanInput, "focus" | "helpers">): readonly TaskId[] {
  return [focus, ...helpers.map(({ inHand }) => inHand?.task ?? null)].filter((task) => task !== null);
}
