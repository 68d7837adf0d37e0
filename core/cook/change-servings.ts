import { atPace } from "../pace/pace.ts";
import type { Progress } from "../plan/model.ts";
import { expandTasks } from "../plan/tasks.ts";
import type { DishId } from "../recipe/model.ts";
import { MOST_SERVINGS, scaleDish } from "../recipe/scale.ts";
import { err, ok } from "../units/result.ts";
import type { Decision } from "./decision.ts";
import { outOfHand } from "./hands.ts";
import type { ServingsWanted } from "./servings-wanted.ts";
import type { Session } from "./session.ts";

/** Whether anything of a dish is over, or in the pot. A step that is in the cook's hands may still take more. */
export const isDishBegun = ({ tasks, progress }: Session, dish: DishId): boolean =>
  tasks.some((task) => {
    const state = progress.get(task.id)?.state ?? "waiting";
    return task.dish.id === dish && state !== "waiting" && (state !== "running" || task.step.hands === "off");
  });

/** Another number of servings, only before the dish has begun: what is in the pot is in the pot. */
export function decideServings({ dish: id, servings }: ServingsWanted, session: Session): Decision {
  const dish = session.meal.dishes.find((one) => one.id === id);
  if (dish === undefined) return err({ code: "NoSuchDish", asked: id });
  const { name } = dish;
  if (!Number.isInteger(servings) || servings < 1 || servings > MOST_SERVINGS)
    return err({ code: "OddServings", most: MOST_SERVINGS });
  if (dish.yield.servings === servings) return err({ code: "ServingsAlready", name, servings });
  if (isDishBegun(session, id)) return err({ code: "DishBegun", name });
  return ok([{ type: "ServingsChanged", dish: id, servings }]);
}

/** The evening from then on: the dish's amounts and batches are others, and what was prepared for it is too. */
export function withServings(session: Session, { dish: id, servings }: ServingsWanted): Session {
  const dishes = session.meal.dishes.map((dish) => (dish.id === id ? scaleDish(dish, servings) : dish));
  const meal = { ...session.meal, dishes };
  const tasks = atPace(expandTasks(meal), session.paces);
  const progress = new Map(
    tasks.map(({ id: task }): [typeof task, Progress] => [
      task,
      session.progress.get(task) ?? { state: "waiting" },
    ]),
  );
  const gone = session.tasks.filter((task) => !progress.has(task.id));
  return {
    ...gone.reduce((free, task) => outOfHand(free, task.id), session),
    meal,
    tasks,
    progress,
    wishes: session.wishes.filter((task) => progress.has(task)),
    prepared: new Set([...session.prepared].filter((portion) => !portion.startsWith(`${id}/`))),
  };
}
