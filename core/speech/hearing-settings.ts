import type { EndpointerSettings } from "./endpointer.ts";
import type { HangoverMs } from "./hangover.ts";

/** Settings of listening, in milliseconds. */
export type HearingSettings = {
  readonly endpointer: EndpointerSettings;
  readonly hangoverMs: HangoverMs;
  /** Quiet after which the recogniser begins to think about what was said, in case that was all. */
  readonly anticipateMs: {
    readonly usual: number;
    /** For an utterance that is short so far, pre-roll included: mostly the address, after which people take breath. */
    readonly short: number;
    readonly shortUpTo: number;
    /** Where the first look came to no whole sentence, another one, of what was heard meanwhile too. */
    readonly again: number;
  };
  /** After the address alone, how long its sound is kept to be joined to the command that follows. */
  readonly addressHeldMs: number;
};

/**
 * A sentence that nothing can be added to ends after 160 ms, a little less than the 200 ms that people leave between
 * turns (Levinson & Torreira, Frontiers in Psychology 2015), as the answer takes its time. One that may go on ends after
 * the 250 ms from which a pause within speech counts as hesitation (Goldman-Eisler, Psycholinguistics, 1968; from memory),
 * and one in the middle may pause almost a second.
 */
export const defaultHearingTimes = {
  hangoverMs: { finished: 160, mayGoOn: 250, begun: 900, otherwise: 500 },
  anticipateMs: { usual: 40, short: 140, shortUpTo: 1_400, again: 300 },
  addressHeldMs: 4_000,
} as const;
