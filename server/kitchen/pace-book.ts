import { knownPaces, readEvening, type EveningRecord } from "../../core/pace/known-paces.ts";
import type { KnownPace } from "../../core/pace/pace.ts";
import { ok, type Result } from "../../core/units/result.ts";
import type { MealStore, StoreFailure } from "../store/meal-store.ts";

/** A year of Sundays. Who cooked otherwise before that is another cook by now. */
const mostEvenings = 52;

/**
 * How this cook takes each kind of work, from the evenings in a log. An evening that is over does not change, so each is
 * read once. One that cannot be read teaches nothing: it must not keep tonight's meal off the stove.
 */
export class PaceBook {
  readonly #store: MealStore;
  readonly #read = new Map<string, EveningRecord>();

  constructor(store: MealStore) {
    this.#store = store;
  }

  /** What is known now, a pace for each kind of work. */
  known(): Result<readonly KnownPace[], StoreFailure> {
    const past = this.#store.past(mostEvenings);
    if (!past.ok) return past;
    const forgottenAt = this.#store.paceForgottenAt();
    if (!forgottenAt.ok) return forgottenAt;
    const records = past.value.map(({ session }) => this.#record(session));
    return ok(knownPaces(records, forgottenAt.value));
  }

  #record(session: string): EveningRecord {
    const known = this.#read.get(session);
    if (known !== undefined) return known;
    const events = this.#store.load(session);
    if (!events.ok) return readEvening([]);
    const record = readEvening(events.value);
    this.#read.set(session, record);
    return record;
  }
}
