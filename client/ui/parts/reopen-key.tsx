import type { Progress, Task } from "../../../core/plan/model.ts";

/** Takes up a step that was done or left out. */
export type OnReopen = (task: Task) => void;

interface ReopenKeyProps {
  readonly task: Task;
  readonly progress: Progress;
  readonly about: string;
  readonly onReopen: OnReopen;
}

/** The way back to a step that is over; nothing for one that is open. */
export function ReopenKey({ task, progress, about, onReopen }: ReopenKeyProps) {
  if (progress.state !== "done" && progress.state !== "skipped") return null;
  return (
    <button
      type="button"
      class="key key-small"
      aria-label={`Open it again: ${about}`}
      onClick={() => onReopen(task)}
    >
      Open it again
    </button>
  );
}
