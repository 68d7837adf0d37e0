import type { Entry, Task } from "../../../core/plan/model.ts";

/** An entry with its task and where the task stands. */
export interface Row {
  readonly entry: Entry;
  readonly task: Task;
  readonly state: "waiting" | "running" | "done";
}
