import type { HouseEvent } from "../../core/house/events.ts";
import { err, ok } from "../../core/units/result.ts";
import type { HouseEntry, HouseStore } from "./house-store.ts";
import { assertContinues, type Outcome, type StoreFailure } from "./meal-store.ts";

/** A household log that is gone with the process: for rehearsals and tests. */
export class MemoryHouseStore implements HouseStore {
  readonly #events: HouseEvent[] = [];
  readonly #outcomes = new Map<string, Outcome>();
  #failure: StoreFailure | null = null;

  /** From now on every write fails so (a full disk in a test); null: the disk is well again. */
  failWith(failure: StoreFailure | null): void {
    this.#failure = failure;
  }

  load(): ReturnType<HouseStore["load"]> {
    return ok([...this.#events]);
  }

  outcomeOf(command: string): ReturnType<HouseStore["outcomeOf"]> {
    return ok(this.#outcomes.get(command) ?? null);
  }

  append(entry: HouseEntry): ReturnType<HouseStore["append"]> {
    if (this.#failure !== null) return err(this.#failure);
    assertContinues(entry, this.#events.length);
    if (this.#outcomes.has(entry.command)) throw new Error(`command ${entry.command} was recorded before`);
    this.#events.push(...entry.events);
    this.#outcomes.set(entry.command, entry.outcome);
    return ok(null);
  }
}
