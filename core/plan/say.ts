import { spokenDuration } from "../units/duration.ts";
import { seconds } from "../units/quantity.ts";
import type { Task } from "./model.ts";

/** A task within a sentence about its dish: `"fry the patties"`, or `batch 2 of "fry the patties"`. */
export function titleOf(task: Task): string {
  const title = `"${task.step.title}"`;
  return task.batch === null ? title : `batch ${task.batch.number} of ${title}`;
}

/** How a sentence about a task begins: `In the lentil soup, "simmer the lentils"`. */
export const inDish = (task: Task): string => `In the ${task.dish.name}, ${titleOf(task)}`;

/** How soon one step must follow another, as said: "at once", "within ten minutes". Takes milliseconds. */
export const spokenLimit = (atMostMs: number): string =>
  atMostMs === 0 ? "at once" : `within ${spokenMinutes(atMostMs)}`;

/** A length in whole minutes, as said; anything above nought is at least a minute. Takes milliseconds. */
export function spokenMinutes(lengthMs: number): string {
  const minutes = lengthMs <= 0 ? 0 : Math.max(1, Math.round(lengthMs / 60_000));
  return spokenDuration(seconds(minutes * 60));
}
