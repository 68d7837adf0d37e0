import type { ReadonlySignal } from "@preact/signals";
import type { Misheard } from "../../core/speech/misheard/misheard.ts";
import type { Keep } from "../../core/speech/misheard/watch.ts";

/** The record of misheard sentences in this browser. */
export interface MisheardRecord {
  /** The newest first. */
  readonly sentences: ReadonlySignal<readonly Misheard[]>;
  /** Why the last thing asked of it could not be done; null where it could. */
  readonly trouble: ReadonlySignal<string | null>;
  /** Which sentence is being played. */
  readonly playing: ReadonlySignal<string | null>;
  /** Reads it anew: another window may have changed it. */
  readonly refresh: () => Promise<void>;
  /** @returns why it could not be kept, as a sentence; null where it is kept */
  readonly keep: (keep: Keep) => Promise<string | null>;
  /** Plays one, in place of another that is being played. */
  readonly play: (id: string) => Promise<void>;
  readonly stop: () => void;
  /** @param meant what the cook says that it was; null takes that back */
  readonly correct: (id: string, meant: string | null) => Promise<void>;
  /** Deletes one, or all (null). */
  readonly remove: (id: string | null) => Promise<void>;
  /** The whole record as one archive; null where it could not be read. */
  readonly file: () => Promise<Uint8Array<ArrayBuffer> | null>;
}
