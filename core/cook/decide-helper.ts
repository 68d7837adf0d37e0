import { err, ok } from "../units/result.ts";
import type { Instant } from "../units/quantity.ts";
import type { Decision } from "./decision.ts";
import { notYet } from "./decide-task.ts";
import type { Happening } from "./events.ts";
import { holderOf, isThere, taskOf } from "./hands.ts";
import type { HelperOrder } from "./orders.ts";
import type { Session } from "./session.ts";

/** Orders about those who help. */
export function decideHelper(order: HelperOrder, session: Session, at: Instant): Decision {
  const { helper } = order;
  const isHere = isThere(session, helper);
  if (order.type === "WelcomeHelper")
    return isHere ? err({ code: "HelperThere", helper }) : ok([{ type: "HelperCame", helper }]);
  if (!isHere) return err({ code: "NoSuchHelper", helper });
  return order.type === "HandTask"
    ? decideHanding(order, session, at)
    : ok([{ type: "HelperLeft", helper }, ...putDown(session, order)]);
}

/** What a helper has in hand is put aside. */
function putDown(session: Session, { helper }: HelperOrder): readonly Happening[] {
  const task = taskOf(session, helper);
  return task === null ? [] : [{ type: "TaskSetAside", task }];
}

/** A step that may begin, or that another has in hand, comes before the helper. */
function decideHanding(
  order: Extract<HelperOrder, { readonly type: "HandTask" }>,
  session: Session,
  at: Instant,
): Decision {
  const task = session.tasks.find(({ id }) => id === order.task);
  if (task === undefined) return err({ code: "NoSuchTask", asked: order.task });
  const { title } = task.step;
  const state = session.progress.get(task.id)?.state ?? "waiting";
  if (state === "done" || state === "skipped") return err({ code: "AlreadyDone", title });
  const holder = holderOf(session, task.id);
  if (holder === order.helper || (state === "running" && holder === null))
    return err({ code: "AlreadyRunning", title });
  const early = notYet(task, session, at);
  if (early !== null) return err(early);
  const aside: readonly Happening[] = holder === null ? [] : [{ type: "TaskSetAside", task: task.id }];
  return ok([
    { type: "TaskChosen", task: task.id },
    ...aside,
    ...putDown(session, order),
    { type: "TaskHanded", task: task.id, helper: order.helper },
  ]);
}
