import type { HouseEvent } from "../../core/house/events.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Result } from "../../core/units/result.ts";
import type { Outcome, StoreFailure } from "./meal-store.ts";

/** A command about the house with what it came to. `events` continue the log without a gap; none where it was refused. */
export interface HouseEntry {
  readonly command: string;
  /** When the server had it, by the server's clock. */
  readonly receivedAt: Instant;
  readonly outcome: Outcome;
  readonly events: readonly HouseEvent[];
}

/**
 * The household log's home: what outlives an evening. As with the meal log, a call has reached the disk when it
 * returns, or has changed nothing; a gap in the log is a bug and is thrown.
 */
export interface HouseStore {
  /** The whole log, in order. */
  load(): Result<readonly HouseEvent[], StoreFailure>;
  /** What a command came to before; null for a new one. */
  outcomeOf(command: string): Result<Outcome | null, StoreFailure>;
  /** Adds a command and its events, all in one. */
  append(entry: HouseEntry): Result<null, StoreFailure>;
}
