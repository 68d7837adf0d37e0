import type { FunctionComponent } from "preact";
import type { Entry, Progress, Task } from "../../../core/plan/model.ts";
import { wayReason } from "../../../core/plan/way-words.ts";
import { formatDuration } from "../../../core/units/duration.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { Deed, OnDeed } from "../parts/deed.ts";
import { stepDeeds } from "../parts/step-deeds.ts";
import { useLazy } from "../parts/use-lazy.ts";
import type { BindingLineProps } from "./binding-line.tsx";

interface PickedStepProps extends BindingLineProps {
  readonly title: string;
  readonly progress: Progress;
  readonly entry: Entry | undefined;
  readonly clockOf: (at: Instant) => string;
  readonly onDeed: OnDeed;
  readonly onHear: () => void;
}

const load = async (): Promise<FunctionComponent<BindingLineProps>> =>
  (await import("./binding-line.tsx")).BindingLine;

/** One step out of the picture: when, what, and what can be done with it. */
export function PickedStep(props: PickedStepProps) {
  const { task, title, progress, entry, clockOf, session, sheet, now, onDeed, onHear } = props;
  const line = useLazy(load);
  const reason = wayReason(task.step);
  return (
    <section class="picked" aria-label={title} aria-live="polite">
      <h3>{title}</h3>
      <p class="picked-when">{when(progress, entry, task, clockOf)}</p>
      {line.state === "here" && <line.Inside task={task} session={session} sheet={sheet} now={now} />}
      <p>{task.step.do}</p>
      {reason !== null && <p>{reason}</p>}
      {task.step.until !== null && (
        <p>
          <b>Done when</b> {task.step.until}.
        </p>
      )}
      <div class="deed-keys">
        <button type="button" class="key" onClick={onHear}>
          Read it to me
        </button>
        {stepDeeds(task, progress).map((deed: Deed) => (
          <button key={deed.label} type="button" class="key" onClick={() => onDeed(deed)}>
            {deed.label}
          </button>
        ))}
      </div>
    </section>
  );
}

function when(
  progress: Progress,
  entry: Entry | undefined,
  task: Task,
  clockOf: (at: Instant) => string,
): string {
  const length = formatDuration(task.step.time);
  switch (progress.state) {
    case "waiting":
      return entry === undefined ? length : `${clockOf(entry.start)} to ${clockOf(entry.end)}, ${length}`;
    case "running":
      return `since ${clockOf(progress.startedAt)}, ${length}`;
    case "done":
      return `done ${clockOf(progress.at)}`;
    case "skipped":
      return `left out ${clockOf(progress.at)}`;
  }
}
