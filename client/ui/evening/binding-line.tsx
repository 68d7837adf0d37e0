import { planInputOf } from "../../../core/cook/run-sheet.ts";
import type { Session } from "../../../core/cook/session.ts";
import { bindingsOf } from "../../../core/plan/critical-chain.ts";
import type { RunSheet, Task } from "../../../core/plan/model.ts";
import { bindingWords } from "../../../core/talk/binding-words.ts";
import { capital } from "../../../core/units/capital.ts";
import { formatDuration } from "../../../core/units/duration.ts";
import { minutes } from "../../../core/units/quantity.ts";
import type { Instant, Seconds } from "../../../core/units/quantity.ts";

/** What the line is worked out from. */
export interface BindingLineProps {
  readonly task: Task;
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly now: Instant;
}

const wholeMinutes = (length: Seconds): string => {
  const rounded = minutes(Math.round(length / 60));
  return formatDuration({ low: rounded, high: rounded });
};

/** What binds a step that has not begun, in the caller's words: "Waits for the oven". */
export function BindingLine({ task, session, sheet, now }: BindingLineProps) {
  const entry = sheet.entries.find((one) => one.task === task.id);
  const binding = bindingsOf(planInputOf(session, now), sheet).get(task.id);
  if (entry === undefined || binding === undefined || binding.kind === "begun") return null;
  return (
    <p class="picked-why">{capital(bindingWords({ task, entry, binding }, session.tasks, wholeMinutes))}.</p>
  );
}
