import { reachesOf } from "./lull.ts";
import type { PlanInput, RunSheet, Task } from "./model.ts";
import { problemOf } from "./problem.ts";

/** What is left to do by hand in the lull that the cook has wished for. */
export interface LullWork {
  /** What its recipe, or what it is wanted for, binds to the table. */
  readonly bound: readonly Task[];
  /** What would be done before, if there were time. */
  readonly crowded: readonly Task[];
}

/** The tasks that keep too short to be done before the lull; by a hair is not enough, since others want that moment too. */
function boundIn(input: PlanInput, lullMs: number): ReadonlySet<Task["id"]> {
  const problem = problemOf(input);
  const reaches = reachesOf(problem);
  const isBound = (index: number, length: number): boolean => (reaches[index] ?? 0) < lullMs + length;
  return new Set(problem.acts.flatMap(({ task, length }, at) => (isBound(at, length) ? [task.id] : [])));
}

/** What a sheet leaves to do by hand in the lull, in its order; what has begun is the cook's already and is not told. */
export function lullWork(input: PlanInput, sheet: RunSheet): LullWork {
  const lullMs = (input.lull ?? 0) * 1000;
  const known = new Map(input.tasks.map((task) => [task.id, task]));
  const table = Math.max(sheet.readyAt, input.serveAt ?? sheet.readyAt);
  const within = sheet.entries.flatMap(({ task: id, end }): readonly Task[] => {
    const task = known.get(id);
    const isOpen = (input.progress.get(id)?.state ?? "waiting") === "waiting";
    return task?.step.hands === "on" && isOpen && end > table - lullMs ? [task] : [];
  });
  const bound = boundIn(input, lullMs);
  return {
    bound: within.filter(({ id }) => bound.has(id)),
    crowded: within.filter(({ id }) => !bound.has(id)),
  };
}
