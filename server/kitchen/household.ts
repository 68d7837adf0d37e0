import { decideHouse, numberedInHouse } from "../../core/house/decide.ts";
import { appendHouse, emptyHouseLog, worthTelling } from "../../core/house/house.ts";
import type { House, HouseLog } from "../../core/house/house.ts";
import type { MadeMeal } from "../../core/house/leftover.ts";
import { houseSentence } from "../../core/house/refusal.ts";
import type {
  Acknowledged,
  HouseAppended,
  HouseOrderMessage,
  HouseSnapshot,
} from "../../core/sync/protocol.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { ok, type Result } from "../../core/units/result.ts";
import type { HouseStore } from "../store/house-store.ts";
import { storeSentence, type StoreFailure } from "../store/meal-store.ts";
import { believable } from "./believable.ts";

/** What the house stands on. Time and ids are handed in, so that a test can turn the clock by hand. */
export interface HouseholdParts {
  readonly store: HouseStore;
  readonly now: () => Instant;
  readonly newId: () => string;
}

/** The one place where orders about the house become events: decide, write, tell; as the kitchen does for a meal. */
export class Household {
  readonly #parts: HouseholdParts;
  readonly #listeners = new Set<(appended: HouseAppended) => void>();
  #log: HouseLog;

  private constructor(parts: HouseholdParts, log: HouseLog) {
    this.#parts = parts;
    this.#log = log;
  }

  /** Takes up what was there when the server last stopped, however it stopped. */
  static open(parts: HouseholdParts): Result<Household, StoreFailure> {
    const events = parts.store.load();
    return events.ok ? ok(new Household(parts, appendHouse(emptyHouseLog, events.value))) : events;
  }

  /** Calls back after every change, when it has reached the disk. @returns what stops it */
  listen(listener: (appended: HouseAppended) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  house(): House {
    return this.#log.house;
  }

  snapshot(): HouseSnapshot {
    return { events: worthTelling(this.#log.events), serverNow: this.#parts.now() };
  }

  /** Carries an order out, or refuses it with a sentence. The same `id` again gets the same answer and does nothing. */
  order({ id, at: given, order }: HouseOrderMessage): Acknowledged {
    const { store, now } = this.#parts;
    const known = store.outcomeOf(id);
    if (!known.ok) return { ok: false, sentence: storeSentence(known.error) };
    if (known.value !== null) return known.value;
    const at = believable(given, now(), this.#log.events.at(-1)?.at ?? null);
    const command = { id, at, order };
    const decided = decideHouse(command, this.#log);
    const events = decided.ok ? numberedInHouse(command, this.#log, decided.value) : [];
    const seq = (this.#log.events.at(-1)?.seq ?? 0) + events.length;
    const outcome: Acknowledged = decided.ok
      ? { ok: true, seq }
      : { ok: false, sentence: houseSentence(decided.error) };
    const written = store.append({ command: id, receivedAt: now(), outcome, events });
    if (!written.ok) return { ok: false, sentence: storeSentence(written.error) };
    this.#log = appendHouse(this.#log, events);
    if (events.length > 0) for (const listener of this.#listeners) listener({ events });
    return outcome;
  }

  /** Notes what an evening makes, where that is news. No device can ask for it. A refusal is the disk's. */
  note(made: MadeMeal): Acknowledged {
    if (JSON.stringify(made) === JSON.stringify(this.#log.house.made))
      return { ok: true, seq: this.#log.events.at(-1)?.seq ?? 0 };
    const { now, newId } = this.#parts;
    return this.order({ id: newId(), at: now(), order: { type: "NoteMeal", made } });
  }
}
