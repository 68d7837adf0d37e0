import type { Progress, Task } from "../../../core/plan/model.ts";
import type { Deed } from "./deed.ts";

/** What can be done with a step in its state: take it up, finish it, leave it out, open it again. */
export function stepDeeds(task: Task, progress: Progress): readonly Deed[] {
  const target = { by: "task", task: task.id } as const;
  const { title } = task.step;
  const now: Deed = { label: "Do this now", intent: { type: "First", target }, words: `${title} first` };
  const started: Deed = {
    label: "It's going",
    intent: { type: "Started", target },
    words: `started: ${title}`,
  };
  const done: Deed = { label: "It's done", intent: { type: "Done", target }, words: `done: ${title}` };
  const skip: Deed = { label: "Leave it out", intent: { type: "Skip", target }, words: `skip: ${title}` };
  switch (progress.state) {
    case "waiting":
      return task.step.hands === "off" ? [now, started, skip] : [now, done, skip];
    case "running":
      return [done, skip];
    case "done":
    case "skipped":
      return [
        { label: "Open it again", intent: { type: "Reopen", target }, words: `take up again: ${title}` },
      ];
  }
}
