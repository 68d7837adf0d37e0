import { atPace } from "../pace/pace.ts";
import { lacks } from "../plan/limits.ts";
import type { Progress } from "../plan/model.ts";
import { expandTasks } from "../plan/tasks.ts";
import { inWays } from "../recipe/in-ways.ts";
import type { WayTaken } from "../recipe/in-ways.ts";
import { err, ok } from "../units/result.ts";
import type { Decision } from "./decision.ts";
import { outOfHand } from "./hands.ts";
import type { Session } from "./session.ts";

/** The cook wants a step done in another of its ways: only before it has begun, and with what the kitchen has. */
export function decideWay({ dish, step, way }: WayTaken, session: Session): Decision {
  const own = session.tasks.filter((task) => task.dish.id === dish && task.step.id === step);
  const ways = own[0]?.step.ways ?? null;
  if (own[0] === undefined || ways === null || ways.all.every(({ name }) => name !== way))
    return err({ code: "NoSuchWay", asked: way });
  const named = { title: own[0].step.title, way: ways.taken };
  if (ways.taken === way) return err({ code: "WayTakenAlready", ...named });
  if (own.some(({ id }) => session.progress.get(id)?.state !== "waiting"))
    return err({ code: "BegunInAWay", ...named });
  const other = expandTasks(session.meal, [{ dish, step, way }]);
  const [lack] = lacks(
    session.meal,
    other.filter((task) => task.dish.id === dish && task.step.id === step),
  );
  return lack === undefined
    ? ok([{ type: "WayTaken", dish, step, way }])
    : err({ code: "KitchenLacks", lack });
}

/** The evening from then on; what has not to do with the step stays as it is. A call of it is made anew. */
export function withWay(session: Session, taken: WayTaken): Session {
  const meal = inWays(session.meal, [{ ...taken, chosen: { by: "cook" } }]);
  const tasks = atPace(expandTasks(meal), session.paces);
  const progress = new Map(
    tasks.map(({ id }): [typeof id, Progress] => [id, session.progress.get(id) ?? { state: "waiting" }]),
  );
  const called = session.tasks.filter(({ dish, step }) => dish.id === taken.dish && step.id === taken.step);
  return {
    ...called.reduce((free, { id }) => outOfHand(free, id), session),
    meal,
    tasks,
    progress,
    wishes: session.wishes.filter((id) => progress.has(id)),
  };
}
