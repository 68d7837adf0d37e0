import { shortName } from "../../../core/cook/say-call.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { Task } from "../../../core/plan/model.ts";
import { capital } from "../../../core/units/capital.ts";
import { theDish } from "../../../core/talk/speech.ts";
import { formatDuration } from "../../../core/units/duration.ts";
import type { OnDeed } from "../parts/deed.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import { dishMarks } from "../parts/dish-marks.ts";
import { stepDeeds } from "../parts/step-deeds.ts";

interface WhatIsLeftProps {
  readonly session: Session;
  readonly onDeed: OnDeed;
}

/** Every dish with its steps; each step can be started, finished, left out, opened again. */
export function WhatIsLeft({ session, onDeed }: WhatIsLeftProps) {
  const marks = dishMarks(session.meal);
  return (
    <>
      {session.meal.dishes.map((dish) => {
        const tasks = session.tasks.filter((task) => task.dish.id === dish.id);
        const open = tasks.filter((task) => isOpen(task, session)).length;
        return (
          <details key={dish.id} class="left-dish">
            <summary>
              <DishMark mark={marks.get(dish.id)} />
              {shortName(dish)}{" "}
              <span class="left-count">{open === 0 ? "all done" : `${open} of ${tasks.length} to do`}</span>
            </summary>
            <ol>
              {tasks.map((task) => (
                <Step key={task.id} task={task} session={session} onDeed={onDeed} />
              ))}
            </ol>
            {open > 0 && (
              <button
                type="button"
                class="key key-small"
                onClick={() =>
                  onDeed({
                    label: "Leave the dish out",
                    intent: { type: "LeaveOut", target: { by: "dish", dish: dish.id } },
                    words: `leave out ${theDish(dish)}`,
                  })
                }
              >
                Leave out {theDish(dish)}
              </button>
            )}
          </details>
        );
      })}
    </>
  );
}

const isOpen = (task: Task, { progress }: Session): boolean => {
  const state = progress.get(task.id)?.state;
  return state === "waiting" || state === "running";
};

const stateWords = { waiting: "to do", running: "going", done: "done", skipped: "left out" } as const;

function Step({ task, session, onDeed }: WhatIsLeftProps & { readonly task: Task }) {
  const progress = session.progress.get(task.id) ?? { state: "waiting" };
  const batch = task.batch === null ? "" : `, batch ${task.batch.number} of ${task.batch.count}`;
  const title = `${capital(task.step.title)}${batch}`;
  return (
    <li class={`left-step left-${progress.state}`}>
      <span class="left-title">{title}</span>
      <span class="left-state">
        {stateWords[progress.state]}, {formatDuration(task.step.time)}
      </span>
      <span class="left-keys">
        {stepDeeds(task, progress).map((deed) => (
          <button
            key={deed.label}
            type="button"
            class="key key-small"
            aria-label={`${deed.label}: ${title}`}
            onClick={() => onDeed(deed)}
          >
            {deed.label}
          </button>
        ))}
      </span>
    </li>
  );
}
