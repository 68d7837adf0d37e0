import type { Session } from "../cook/session.ts";
import type { FoodTable } from "../food/food.ts";
import { stepsOf } from "../keeping/hazards.ts";
import { keepingOf } from "../keeping/keeping.ts";
import type { Keeping } from "../keeping/keeping.ts";
import type { Task } from "../plan/model.ts";
import type { Dish } from "../recipe/model.ts";
import { instant } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { MadeDish, MadeMeal } from "./leftover.ts";

/** When a dish left the heat and when it was ready, as far as its evening has come. */
export type Readiness = Pick<MadeDish, "offHeatAt" | "readyAt">;

const isHeated = ({ step }: Task): boolean =>
  step.needs.some(({ kind }) => kind === "burner" || kind === "oven");

const tasksOf = (session: Session, dish: Dish["id"]): readonly Task[] =>
  session.tasks.filter((task) => task.dish.id === dish);

/** The latest end of some tasks; null where one of them is still open, or none was done. */
function endOf(session: Session, tasks: readonly Task[]): Instant | null {
  const states = tasks.map(({ id }) => session.progress.get(id));
  if (states.some((one) => one?.state === "waiting" || one?.state === "running")) return null;
  const ends = states.flatMap((one) => (one?.state === "done" ? [one.at] : []));
  return ends.length === 0 ? null : instant(Math.max(...ends));
}

/** How far a dish has come. */
export function readiness(session: Session, dish: Dish["id"]): Readiness {
  const tasks = tasksOf(session, dish);
  return { offHeatAt: endOf(session, tasks.filter(isHeated)), readyAt: endOf(session, tasks) };
}

/** A dish that was left out from its first step to its last is not on the table. */
const isCooked = (session: Session, { id }: Dish): boolean =>
  tasksOf(session, id).some((task) => session.progress.get(task.id)?.state !== "skipped");

// Asked at every event of an evening, and a food that is not in the table takes milliseconds to look for in vain.
const known = new WeakMap<FoodTable, WeakMap<Dish, Keeping>>();

function keepingIn(dish: Dish, foods: FoodTable | null): Keeping {
  if (foods === null) return keepingOf(dish.ingredients, stepsOf(dish), null);
  const worked = known.get(foods) ?? new WeakMap<Dish, Keeping>();
  const keeping = worked.get(dish) ?? keepingOf(dish.ingredients, stepsOf(dish), foods);
  known.set(foods, worked.set(dish, keeping));
  return keeping;
}

/** What an evening makes, for the household log. @param endedAt null: it is being cooked */
export function madeMeal(
  session: string,
  evening: Session,
  endedAt: Instant | null,
  foods: FoodTable | null,
): MadeMeal {
  const { meal, begunAt } = evening;
  const dishes = meal.dishes
    .filter((dish) => isCooked(evening, dish))
    .map((dish): MadeDish => ({
      dish: dish.id,
      name: dish.name,
      says: dish.says,
      yield: dish.yield,
      isHot: tasksOf(evening, dish.id).some(isHeated),
      keeping: keepingIn(dish, foods),
      ...(endedAt === null ? { offHeatAt: null, readyAt: null } : readiness(evening, dish.id)),
    }));
  return { session, name: meal.name, dishes, begunAt, endedAt };
}
