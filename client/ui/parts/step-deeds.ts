import type { Progress, Task } from "../../../core/plan/model.ts";
import { wayNames } from "../../../core/talk/names.ts";
import { capital } from "../../../core/units/capital.ts";
import type { Deed } from "./deed.ts";

/** A key for each other way of doing a step that has several. */
function otherWays({ id, step: { title, ways } }: Task): readonly Deed[] {
  const others = ways?.all.filter(({ name }) => name !== ways.taken) ?? [];
  return others.map(({ name }) => ({
    label: `${capital(name)} instead`,
    intent: { type: "TakeWay", way: wayNames(name)[0] ?? "", target: { by: "task", task: id } },
    words: `${title} ${name} instead`,
  }));
}

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
      return [now, task.step.hands === "off" ? started : done, ...otherWays(task), skip];
    case "running":
      return [done, skip];
    case "done":
    case "skipped":
      return [
        { label: "Open it again", intent: { type: "Reopen", target }, words: `take up again: ${title}` },
      ];
  }
}
