import type { Chance } from "../../../core/plan/engine/chance.ts";
import type { PlanInput, Task, TaskId } from "../../../core/plan/model.ts";
import { MEAN_PACE, PACE, triangular } from "../../../core/plan/on-time.ts";
import { plan } from "../../../core/plan/plan.ts";
import { plannedLength } from "../../../core/plan/tasks.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { instant } from "../../../core/units/quantity.ts";

/** As a cook is planned whose pace is known: at the mean one. */
export const atMeanPace = (tasks: readonly Task[]): readonly Task[] =>
  tasks.map((task) => (task.step.hands === "on" ? { ...task, pace: MEAN_PACE } : task));

/** How long each task takes in one evening, as a part of its recipe's planned length. */
export function pacesOf(tasks: readonly Task[], chance: Chance): ReadonlyMap<TaskId, number> {
  const hands = triangular(PACE.low, PACE.likely, PACE.high, chance.next());
  return new Map(
    tasks.map(({ id, step }) => {
      const { low, high } = step.time;
      const drawn = triangular(low, (low + high) / 2, high, chance.next());
      return [id, (drawn / plannedLength(step.time)) * (step.hands === "on" ? hands : 1)];
    }),
  );
}

/** When dinner is asked for by a cook who begins a tenth of the meal's length early. */
export function aTenthEarly(input: PlanInput): Instant {
  return instant(Math.round(input.now + 1.1 * (plan({ ...input, serveAt: null }).readyAt - input.now)));
}
