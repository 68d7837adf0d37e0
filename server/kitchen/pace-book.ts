import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { knownPaces, readEvening, type EveningRecord } from "../../core/pace/known-paces.ts";
import type { KnownPace } from "../../core/pace/pace.ts";
import type { Seconds } from "../../core/units/quantity.ts";
import { ok, type Result } from "../../core/units/result.ts";
import type { MealStore, StoreFailure } from "../store/meal-store.ts";

/** A year of Sundays. Who cooked otherwise before that is another cook by now. */
const mostEvenings = 52;

/**
 * How this cook takes each kind of work, and what was wished for, from the evenings in a log. An evening that is over does not change, so each is
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

  /** How long before serving the cook wants the hands free, as the last evening left it; null: not at all. */
  lull(): Seconds | null {
    const past = this.#store.past(1);
    const last = past.ok ? past.value[0] : undefined;
    const events = last === undefined ? null : this.#store.load(last.session);
    return events?.ok === true ? (appendEvents(emptyLog, events.value).session?.lull ?? null) : null;
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
