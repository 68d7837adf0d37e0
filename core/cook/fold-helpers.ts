import { helpers as allHelpers } from "../plan/worker.ts";
import type { Helper } from "../plan/worker.ts";
import type { HelperHappening } from "./events.ts";
import type { Session } from "./session.ts";
import { isThere } from "./hands.ts";

/** Somebody came to help, or left. What one who leaves had in hand is put aside by the next event. */
export function evolveHelpers(
  session: Session,
  { type, helper }: Exclude<HelperHappening, { readonly type: "TaskHanded" }>,
): Session {
  switch (type) {
    case "HelperCame":
      return isThere(session, helper) ? session : ofThose(session, inOrder(session, helper));
    case "HelperLeft":
      return ofThose(
        session,
        session.helpers.filter((one) => one.helper !== helper),
      );
  }
}

/** What was laid was laid for another number of hands. */
const ofThose = (session: Session, helpers: Session["helpers"]): Session => ({
  ...session,
  helpers,
  course: null,
});

const inOrder = ({ helpers }: Session, fresh: Helper): Session["helpers"] =>
  allHelpers.flatMap((helper) =>
    helper === fresh ? [{ helper, inHand: null }] : helpers.filter((one) => one.helper === helper),
  );
