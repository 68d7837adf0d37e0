import type { MealEvent } from "../../../core/cook/events.ts";
import type { JournalEntry } from "../../../client/sound/journal.ts";

/** A timer's first ring on a page. */
export interface FirstRing {
  readonly name: string;
  readonly chime: number;
  /** How long after its deadline in the log the page rang, in ms. */
  readonly lateMs: number;
}

/** The first ring of every timer, against the deadline that the log gives it; timers that were never changed. */
export function firstRings(
  events: readonly MealEvent[],
  journal: readonly JournalEntry[],
): readonly FirstRing[] {
  return journal.flatMap((entry): readonly FirstRing[] => {
    if (entry.kind !== "rang" || entry.round !== 1) return [];
    const started = events.find(
      ({ happening }) => happening.type === "TimerStarted" && happening.timer === entry.text,
    );
    if (started?.happening.type !== "TimerStarted") return [];
    const { name, span } = started.happening;
    return [{ name, chime: entry.chime, lateMs: entry.at - (started.at + span.low * 1000) }];
  });
}
