import { mention } from "../intent.ts";
import type { Intent, Mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

const topic = "timers";

type OneTimer = "PauseTimer" | "ResumeTimer" | "RestartTimer" | "StopTimer" | "CancelTimer" | "AskTimer";

/** One intent about one timer, with and without its name; `bare` is said of the only one or of the one that rings. */
export function aboutOne(
  type: OneTimer,
  examples: readonly [string, string],
  bare: readonly string[],
  named: readonly string[],
  typed: readonly [bare: readonly string[], named: readonly string[]] = [[], []],
): readonly PhraseEntry[] {
  const of = (timer: Mention | null): Intent => ({ type, timer });
  return [
    {
      intent: type,
      topic,
      occasion: "timers",
      example: examples[0],
      says: bare,
      typed: typed[0],
      make: () => of(null),
    },
    {
      intent: type,
      topic,
      occasion: "timers",
      example: examples[1],
      says: named,
      typed: typed[1],
      make: ({ timer }) => of(mention(timer)),
    },
  ];
}
