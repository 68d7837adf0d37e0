import type { Binding } from "../plan/critical-chain.ts";
import type { Entry, Task, TaskId } from "../plan/model.ts";
import type { Seconds } from "../units/quantity.ts";
import { inProgress } from "./names.ts";

/** What is told of one step: where it stands on the sheet, and what binds it there. */
export interface Bound {
  readonly task: Task;
  readonly entry: Entry;
  readonly binding: Binding;
}

/** Less than this is not worth a word, in seconds. */
const least = 60;

/** A task as what is being done: "chopping the onion"; a batch of the same step as "the batch before". */
function otherThan(mine: Task, id: TaskId, tasks: readonly Task[]): string {
  const other = tasks.find((task) => task.id === id);
  if (other === undefined) return "another step";
  return other.dish.id === mine.dish.id && other.step.id === mine.step.id
    ? "the batch before"
    : inProgress(other.step.title);
}

/**
 * What binds a step, in a few words that go after its name: "waits for the oven", "could start 12 min later". The
 * screen and the voice share them.
 * @param length how lengths are written or said
 */
export function bindingWords(
  { task, entry, binding }: Bound,
  tasks: readonly Task[],
  length: (of: Seconds) => string,
): string {
  switch (binding.kind) {
    case "after":
      return binding.rest > 0
        ? `waits for a rest after ${otherThan(task, binding.task, tasks)}`
        : `comes after ${otherThan(task, binding.task, tasks)}`;
    case "hands":
      return "waits for your hands";
    case "thing":
      return binding.thing === "burner" ? "waits for a burner" : `waits for the ${binding.thing}`;
    case "rack":
      return `waits for room in the ${binding.oven}`;
    case "heat":
      return `waits for the ${binding.oven}`;
    case "soon": {
      const when = binding.within > 0 ? `within ${length(binding.within)}` : "at once";
      return `is held so that ${otherThan(task, binding.task, tasks)} can follow ${when}`;
    }
    case "hot":
      return `keeps hot only ${length(binding.keeps)}`;
    case "fresh":
      return "is best just before serving";
    case "ahead":
      return `keeps only ${length(binding.keeps)}`;
    case "wish":
      return "goes first, as you asked";
    case "begun":
      return "is going";
    case "now":
      return entry.slack >= least ? `could start ${length(entry.slack)} later` : "is to start now";
    case "free":
      return binding.slack >= least
        ? `could start ${length(binding.slack)} later`
        : `could start ${length(binding.room)} sooner`;
  }
}
