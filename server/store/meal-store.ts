import type { MealEvent } from "../../core/cook/events.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Result } from "../../core/units/result.ts";

/** One evening in the log. `session` is its id; a kitchen cooks one at a time. */
export interface StoredSession {
  readonly session: string;
  /** The id of the command that began it: begun twice, it is still one evening. */
  readonly begunBy: string;
  /** The meal's id. */
  readonly meal: string;
  readonly begunAt: Instant;
  readonly endedAt: Instant | null;
}

/** What a command came to; a command that comes again is answered with it again. */
export type Outcome =
  /** `seq` is the number of the last event in the log when it was carried out. */
  { readonly ok: true; readonly seq: number } | { readonly ok: false; readonly sentence: string };

/** A command with what it came to. `events` continue the log without a gap; none where it was refused. */
export interface Entry {
  readonly session: string;
  readonly command: string;
  /** When the server had it, by the server's clock. */
  readonly receivedAt: Instant;
  readonly outcome: Outcome;
  readonly events: readonly MealEvent[];
}

/** Why the log could not be read or written. */
export type StoreFailure =
  | { readonly code: "DiskFull" }
  | { readonly code: "ReadOnly"; readonly place: string }
  | { readonly code: "Damaged"; readonly place: string; readonly detail: string }
  | { readonly code: "Unopened"; readonly place: string; readonly detail: string }
  | { readonly code: "NewerVersion"; readonly place: string }
  | { readonly code: "InUse"; readonly place: string }
  | { readonly code: "Broken"; readonly detail: string };

/**
 * The meal log's home. Everything is done at once and in order: a call has reached the disk when it returns,
 * or has changed nothing. Expected failures of the disk are results; a gap in the log is a bug and is thrown.
 */
export interface MealStore {
  /** The evening that is being cooked: the latest that has not ended. */
  current(): Result<StoredSession | null, StoreFailure>;
  /** Which evening a "begin" command began; null when it began none. */
  begunBy(command: string): Result<StoredSession | null, StoreFailure>;
  /** The whole log of an evening, in order; empty for one that was never begun. */
  load(session: string): Result<readonly MealEvent[], StoreFailure>;
  /** What a command came to before; null for a new one. */
  outcomeOf(session: string, command: string): Result<Outcome | null, StoreFailure>;
  /** Opens an evening with its first command, all in one. */
  begin(session: StoredSession, first: Entry): Result<null, StoreFailure>;
  /** Adds a command and its events, all in one. An event `MealEnded` closes the evening. */
  append(entry: Entry): Result<null, StoreFailure>;
  /** The evenings that are over, the latest first, at most so many. */
  past(most: number): Result<readonly StoredSession[], StoreFailure>;
  /** Until when nothing counts that was learnt of the cook's pace; null: all of it counts. */
  paceForgottenAt(): Result<Instant | null, StoreFailure>;
  /** From now on nothing counts that was learnt until `at`. The evenings stay as they are. */
  forgetPace(at: Instant): Result<null, StoreFailure>;
  close(): void;
}

/** Plain words for the cook: what is wrong, then what to do. */
export function storeSentence(failure: StoreFailure): string {
  switch (failure.code) {
    case "DiskFull":
      return "The disk is full; nothing was recorded. Make room on it, then say that again.";
    case "ReadOnly":
      return `The meal log ${failure.place} may not be written; nothing was recorded. Allow writing to it, then say that again.`;
    case "Damaged":
      return `The meal log ${failure.place} is damaged (${failure.detail}). Move it away, or name another folder with --data, and start again.`;
    case "Unopened":
      return `The meal log ${failure.place} cannot be opened (${failure.detail}). Name another folder with --data.`;
    case "NewerVersion":
      return `The meal log ${failure.place} was written by a newer Stovecall. Start that one, or name another folder with --data.`;
    case "InUse":
      return `Another Stovecall is using the meal log in ${failure.place}. Stop that one, or name another folder with --data.`;
    case "Broken":
      return `The meal log cannot be used (${failure.detail}); nothing was recorded. Start Stovecall again.`;
  }
}

/** When the entry closes the evening; null when it does not. */
export function endOf(entry: Entry): Instant | null {
  return entry.events.find(({ happening }) => happening.type === "MealEnded")?.at ?? null;
}

/** Throws when the entry's events do not follow `lastSeq` one by one, or name another command. */
export function assertContinues(
  entry: {
    readonly command: string;
    readonly events: readonly { readonly seq: number; readonly command: string }[];
  },
  lastSeq: number,
): void {
  for (const [index, event] of entry.events.entries()) {
    if (event.seq !== lastSeq + index + 1 || event.command !== entry.command) {
      throw new Error(
        `event ${event.seq} of command ${event.command} cannot follow ${lastSeq + index} under command ${entry.command}`,
      );
    }
  }
}
