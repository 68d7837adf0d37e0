import type { HeardSound } from "./misheard/sound-to-hand-out.ts";
import type { RoomSecond } from "./room-noise.ts";
import type { SentenceLevels } from "./sentence-levels.ts";
import type { Verdict } from "./verdict.ts";

/** What listening brings about, in order. Frames are 20 ms, counted from the start of the stream. */
export type HearingEvent =
  | { readonly kind: "level"; readonly dbfs: number }
  /** Each second, of that second. */
  | ({ readonly kind: "room" } & RoomSecond)
  | { readonly kind: "speech-started"; readonly atFrame: number }
  | { readonly kind: "partial"; readonly words: readonly string[] }
  /** A grammar that had to wait for the end of an utterance was then refused; the one before goes on. */
  | { readonly kind: "grammar-refused"; readonly sentence: string }
  | {
      readonly kind: "heard";
      readonly verdict: Verdict;
      /** Null for digital silence. */
      readonly levels: SentenceLevels | null;
      readonly startedAtFrame: number;
      readonly endedAtFrame: number;
      /** When it was over: what came after is still to be heard. */
      readonly concludedAtFrame: number;
      /** Null where the record of misheard sentences is off, and for whatever is none of its business. */
      readonly sound: HeardSound | null;
    };

/** An utterance that is over. */
export type HeardEvent = Extract<HearingEvent, { readonly kind: "heard" }>;
