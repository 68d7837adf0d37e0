import type { Session } from "../../../core/cook/session.ts";
import type { Galley } from "../galley.ts";

/** What a check of the ear needs. */
export interface CheckProps {
  readonly galley: Galley;
  readonly session: Session;
  readonly onClose: () => void;
}
