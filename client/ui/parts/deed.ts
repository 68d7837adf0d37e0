import type { Intent } from "../../../core/talk/intent.ts";

/** Something the cook can do with a touch; `words` is the sentence that means the same. */
export interface Deed {
  readonly label: string;
  readonly intent: Intent;
  readonly words: string;
}

/** Carries a touch to the conversation. */
export type OnDeed = (deed: Deed) => void;
