import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { OnDeed } from "../parts/deed.ts";

/** What both pictures of the evening are drawn from. */
export interface EveningProps {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly now: Instant;
  readonly clockOf: (at: Instant) => string;
  readonly utcOffsetMinutes: number;
  readonly onDeed: OnDeed;
  readonly onHear: (sentence: string) => void;
}

/** What the part that is loaded after the page gets besides. */
export interface EveningInsideProps extends EveningProps {
  /** Whether the whole evening is laid out large. */
  readonly isOpen: boolean;
  readonly onClose: () => void;
}
