/** What the sound layer did, for the screen's history and for tests. `at` is in epoch milliseconds. */
export type JournalEntry =
  /** `said` was heard to its end, `shown` was only a caption, `cut` was stopped in the middle, `notice` speaks of sound itself. */
  | {
      readonly kind: "said" | "shown" | "cut" | "notice" | "earcon";
      readonly text: string;
      readonly at: number;
    }
  /** `text` is the timer's id; one entry for each round, each louder than the last up to the third. */
  | {
      readonly kind: "rang";
      readonly text: string;
      readonly chime: number;
      readonly round: number;
      readonly at: number;
    }
  | { readonly kind: "ringStopped"; readonly text: string; readonly at: number };

/** The last `limit` entries, oldest first. */
export interface Journal {
  readonly note: (entry: JournalEntry) => void;
  readonly entries: () => readonly JournalEntry[];
}

/** Kept in memory only: what counts is in the meal log. */
export function createJournal(limit = 200): Journal {
  const entries: JournalEntry[] = [];
  return {
    note: (entry) => {
      entries.push(entry);
      if (entries.length > limit) entries.splice(0, entries.length - limit);
    },
    entries: () => [...entries],
  };
}
