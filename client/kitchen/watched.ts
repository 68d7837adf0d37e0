import type { Ear } from "./ear-model.ts";
import type { Caller, Line } from "./caller.ts";
import type { JournalEntry } from "../sound/journal.ts";
import type { Sound } from "../sound/player.ts";

/** What this page has heard, said and rung. */
export interface Watched {
  readonly lines: readonly Line[];
  readonly journal: readonly JournalEntry[];
  readonly ear: string;
  /** Whether the caller is being heard at this moment. */
  readonly speaking: boolean;
}

/**
 * Lets a watcher read the page where its address ends in #watch, as `stovecall()` in the browser's console:
 * the captions tell what was said, and nothing else on the screen tells what was rung. It can change nothing.
 */
export function letWatch(caller: Caller, sound: Sound, ear: Ear): void {
  if (location.hash !== "#watch") return;
  const value = (): Watched => ({
    lines: caller.lines.peek(),
    journal: sound.journal(),
    ear: ear.state.peek().kind,
    speaking: sound.isSpeaking(),
  });
  Object.defineProperty(globalThis, "stovecall", { value });
}
