import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { Galley } from "../galley.ts";
import type { OnDeed } from "../parts/deed.ts";

/** What the drawer needs. */
export interface DrawerProps {
  readonly galley: Galley;
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly onDeed: OnDeed;
  /** Puts the drawer away and begins a check of the ear. */
  readonly onCheckEar: () => void;
  readonly onClose: () => void;
}
