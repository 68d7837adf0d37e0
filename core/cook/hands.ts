import { inHands } from "../plan/hands.ts";
import type { Helper, Worker } from "../plan/worker.ts";
import type { TaskId } from "../plan/model.ts";
import type { Session } from "./session.ts";

/** What the cook and the helpers have in hand. */
export const heldTasks = ({ focus, helpers }: Session): readonly TaskId[] =>
  inHands({ focus: focus?.task ?? null, helpers });

/** Whoever has nothing in hand, the cook first. */
export function freeWorkers({ focus, helpers }: Session): readonly Worker[] {
  const idle = helpers.flatMap(({ helper, inHand }) => (inHand === null ? [helper] : []));
  return focus === null ? ["cook", ...idle] : idle;
}

/** Who has a step in hand; null where nobody has. */
export function holderOf({ focus, helpers }: Session, task: TaskId): Worker | null {
  if (focus?.task === task) return "cook";
  return helpers.find(({ inHand }) => inHand?.task === task)?.helper ?? null;
}

/** What one of them has in hand. */
export const taskOf = ({ focus, helpers }: Session, worker: Worker): TaskId | null =>
  (worker === "cook" ? focus : helpers.find(({ helper }) => helper === worker)?.inHand)?.task ?? null;

/** Whether a helper is there. */
export const isThere = ({ helpers }: Session, who: Helper): boolean =>
  helpers.some(({ helper }) => helper === who);

/** The evening with a step in nobody's hand. */
export function outOfHand(session: Session, task: TaskId): Session {
  const holder = holderOf(session, task);
  if (holder === null) return session;
  if (holder === "cook") return { ...session, focus: null };
  return withHelperAt(session, holder, null);
}

/** The evening with something else, or nothing, in a helper's hand. */
export const withHelperAt = (
  session: Session,
  who: Helper,
  inHand: Session["helpers"][number]["inHand"],
): Session => ({
  ...session,
  helpers: session.helpers.map((one) => (one.helper === who ? { helper: who, inHand } : one)),
});
