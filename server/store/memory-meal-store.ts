import type { MealEvent } from "../../core/cook/events.ts";
import { later, type Instant } from "../../core/units/quantity.ts";
import { err, ok } from "../../core/units/result.ts";
import {
  assertContinues,
  endOf,
  type Entry,
  type MealStore,
  type Outcome,
  type StoredSession,
  type StoreFailure,
} from "./meal-store.ts";

interface Evening {
  readonly stored: StoredSession;
  readonly events: readonly MealEvent[];
  readonly outcomes: ReadonlyMap<string, Outcome>;
}

/** A meal log that is gone with the process: for rehearsals and tests. */
export class MemoryMealStore implements MealStore {
  readonly #evenings = new Map<string, Evening>();
  #failure: StoreFailure | null = null;
  #paceForgottenAt: Instant | null = null;

  /** From now on every write fails so (a full disk in a test); null: the disk is well again. */
  failWith(failure: StoreFailure | null): void {
    this.#failure = failure;
  }

  current(): ReturnType<MealStore["current"]> {
    const open = [...this.#evenings.values()].filter(({ stored }) => stored.endedAt === null);
    return ok(open.at(-1)?.stored ?? null);
  }

  begunBy(command: string): ReturnType<MealStore["begunBy"]> {
    const found = [...this.#evenings.values()].find(({ stored }) => stored.begunBy === command);
    return ok(found?.stored ?? null);
  }

  load(session: string): ReturnType<MealStore["load"]> {
    return ok(this.#evenings.get(session)?.events ?? []);
  }

  outcomeOf(session: string, command: string): ReturnType<MealStore["outcomeOf"]> {
    return ok(this.#evenings.get(session)?.outcomes.get(command) ?? null);
  }

  begin(stored: StoredSession, first: Entry): ReturnType<MealStore["begin"]> {
    if (this.#failure !== null) return err(this.#failure);
    if (this.#evenings.has(stored.session)) throw new Error(`evening ${stored.session} was begun before`);
    this.#keep({ stored, events: [], outcomes: new Map() }, first);
    return ok(null);
  }

  append(entry: Entry): ReturnType<MealStore["append"]> {
    if (this.#failure !== null) return err(this.#failure);
    const evening = this.#evenings.get(entry.session);
    if (evening === undefined) throw new Error(`evening ${entry.session} was never begun`);
    this.#keep(evening, entry);
    return ok(null);
  }

  past(most: number): ReturnType<MealStore["past"]> {
    const over = [...this.#evenings.values()].filter(({ stored }) => stored.endedAt !== null);
    const stored = over.map((evening) => evening.stored).toSorted((a, b) => b.begunAt - a.begunAt);
    return ok(stored.slice(0, most));
  }

  paceForgottenAt(): ReturnType<MealStore["paceForgottenAt"]> {
    return ok(this.#paceForgottenAt);
  }

  forgetPace(at: Instant): ReturnType<MealStore["forgetPace"]> {
    if (this.#failure !== null) return err(this.#failure);
    this.#paceForgottenAt = later(at, this.#paceForgottenAt ?? at);
    return ok(null);
  }

  close(): void {
    this.#evenings.clear();
  }

  #keep({ stored, events, outcomes }: Evening, entry: Entry): void {
    assertContinues(entry, events.length);
    if (outcomes.has(entry.command)) throw new Error(`command ${entry.command} was recorded before`);
    this.#evenings.set(stored.session, {
      stored: { ...stored, endedAt: stored.endedAt ?? endOf(entry) },
      events: [...events, ...entry.events],
      outcomes: new Map(outcomes).set(entry.command, entry.outcome),
    });
  }
}
