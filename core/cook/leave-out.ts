import type { Task } from "../plan/model.ts";
import type { DishId } from "../recipe/model.ts";
import { err, ok } from "../units/result.ts";
import type { Decision } from "./decision.ts";
import type { Session, Timer } from "./session.ts";

/** What goes when a dish is left out. */
export interface Leaving {
  /** Its steps that have not ended. */
  readonly tasks: readonly Task[];
  /** Those timers of its steps, and of the cook's own for it, that have not been stopped. */
  readonly timers: readonly Timer[];
}

/** What would go with a dish. */
export function leavingOf(dish: DishId, { tasks, progress, timers }: Session): Leaving {
  const isOpen = ({ id }: Task): boolean =>
    ["waiting", "running"].includes(progress.get(id)?.state ?? "waiting");
  return {
    tasks: tasks.filter((task) => task.dish.id === dish && isOpen(task)),
    timers: [...timers.values()].filter((timer) => timer.dish === dish && timer.run.state !== "stopped"),
  };
}

/** Whether anything but this dish is, or will be, on the table. The tasks of one dish never wait for those of another. */
const isOtherLeft = (dish: DishId, { tasks, progress }: Session): boolean =>
  tasks.some((task) => task.dish.id !== dish && progress.get(task.id)?.state !== "skipped");

/** Leaves a dish out: its steps that have not ended are skipped and its timers stopped, all by one command. */
export function decideLeaveOut(dish: DishId, session: Session): Decision {
  const found = session.meal.dishes.find(({ id }) => id === dish);
  if (found === undefined) return err({ code: "NoSuchDish", asked: dish });
  const { tasks, timers } = leavingOf(dish, session);
  if (tasks.length === 0) return err({ code: "DishOver", name: found.name });
  if (!isOtherLeft(dish, session)) return err({ code: "OnlyDish", name: found.name });
  return ok([
    ...tasks.map(({ id }) => ({ type: "TaskSkipped", task: id }) as const),
    ...timers.map(({ id }) => ({ type: "TimerStopped", timer: id }) as const),
  ]);
}
