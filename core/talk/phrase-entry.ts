import type { Helper } from "../plan/worker.ts";
import type { Intent, IntentType, Topic } from "./intent.ts";
import type { Slots } from "./slots.ts";

/**
 * When a phrase is worth listening for. The parser understands every phrase at any time; the recogniser
 * hears the fewer words the better, so it is given only what could make sense.
 */
export type Occasion =
  | "always"
  | "meal"
  | "foods"
  | "ways"
  | "to-start"
  | "timers"
  | "ringing"
  | "question"
  | "corrected"
  | "left"
  /** A meal is on, or somebody looks at the buying list. */
  | "adding"
  /** Something is on it. */
  | "listed"
  /** Somebody looks at it. */
  | "shopping"
  | Helper;

/**
 * Some ways of saying one thing. Patterns are plain words with `(this|that)` for alternatives, `[words]` for what
 * may be left out and `{slot}` for what is named. Written without contractions: "what is" also stands for "what's".
 */
export interface PhraseEntry {
  readonly intent: IntentType;
  readonly topic: Topic | "answers";
  readonly occasion: Occasion;
  /** Heard and read. */
  readonly says: readonly string[];
  /** Understood when read, but not listened for: short forms that only a keyboard brings. */
  readonly typed: readonly string[];
  /** An example for the help pages, as the cook would say it; null where another entry of the intent has it. */
  readonly example: string | null;
  readonly make: (slots: Slots) => Intent;
}

/** An entry whose intent has no slots. */
export function plain(
  intent: Intent,
  topic: PhraseEntry["topic"],
  occasion: Occasion,
  example: string | null,
  says: readonly string[],
  typed: readonly string[] = [],
): PhraseEntry {
  return { intent: intent.type, topic, occasion, says, typed, example, make: () => intent };
}
