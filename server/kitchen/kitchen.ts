import { swapsChosen } from "../../core/cook/chosen-swaps.ts";
import { decide, numbered } from "../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import type { LaidStep } from "../../core/cook/events.ts";
import { mayLay } from "../../core/cook/may-lay.ts";
import type { Command, Order } from "../../core/cook/orders.ts";
import { sentence } from "../../core/cook/refusal.ts";
import type { MealLog, Session } from "../../core/cook/session.ts";
import type { Note } from "../../core/next-time/note.ts";
import { helpers } from "../../core/plan/worker.ts";
import { pacesFor, tasksAtPace, type PacesOf } from "../../core/pace/known-paces.ts";
import type { Pace } from "../../core/pace/pace.ts";
import { inBestWays } from "../../core/plan/ways.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import type {
  Acknowledged,
  Appended,
  BeginMessage,
  Begun,
  OrderMessage,
  Snapshot,
} from "../../core/sync/protocol.ts";
import { instant, type Instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { eatenBefore, type Eaten } from "./eaten-book.ts";
import {
  storeSentence,
  type Entry,
  type MealStore,
  type StoredSession,
  type StoreFailure,
} from "../store/meal-store.ts";
import { believable } from "./believable.ts";
import { answersTo, NoteBook } from "./note-book.ts";
import { PaceBook } from "./pace-book.ts";

/** What every device has to hear. */
export type Announcement =
  | { readonly type: "snapshot"; readonly snapshot: Snapshot }
  | { readonly type: "events"; readonly appended: Appended };

/** What the kitchen stands on. Time and ids are handed in, so that a test can turn the clock by hand. */
export interface KitchenParts {
  readonly store: MealStore;
  /** The meal with its dishes scaled; or one sentence that says why it cannot be cooked. */
  readonly meal: (id: string, servings: BeginMessage["servings"]) => Result<CookingMeal, string>;
  readonly now: () => Instant;
  readonly newId: () => string;
}

/** The evening being cooked, looked at once. */
export interface CookedEvening {
  readonly session: string;
  readonly state: Session;
  readonly at: Instant;
}

/** A clock that was not let act for so long: this machine slept. */
const asleepMs = 150_000;
/** So long after a sleep nothing is called: what devices that were awake have done meanwhile comes in first, at its time. */
const devicesFirstMs = 10_000;

interface Evening {
  readonly session: string;
  readonly log: MealLog;
}

/**
 * The one place where orders become events: decide, write, tell. A call runs to its end before the next one
 * starts (nothing in it waits), so the orders of all devices form one queue in the order of their arrival.
 */
export class Kitchen {
  readonly #parts: KitchenParts;
  readonly #listeners = new Set<(announcement: Announcement) => void>();
  readonly #paceBook: PaceBook;
  readonly #noteBook: NoteBook;
  #evening: Evening | null = null;
  /** The latest moment that this evening has seen, and by how much the machine's clock was set back since it began. */
  #seen = instant(0);
  #aheadMs = 0;
  /** When the clock was last let act, and until when the devices go before it. */
  #ticked: Instant | null = null;
  #devicesFirst = instant(0);

  private constructor(parts: KitchenParts) {
    this.#parts = parts;
    this.#paceBook = new PaceBook(parts.store);
    this.#noteBook = new NoteBook(parts.store);
  }

  /** Takes up the evening that was being cooked when the server last stopped, however it stopped. */
  static open(parts: KitchenParts): Result<Kitchen, StoreFailure> {
    const kitchen = new Kitchen(parts);
    const current = parts.store.current();
    if (!current.ok) return current;
    if (current.value === null) return ok(kitchen);
    const events = parts.store.load(current.value.session);
    if (!events.ok) return events;
    kitchen.#evening = { session: current.value.session, log: appendEvents(emptyLog, events.value) };
    kitchen.#seen = events.value.at(-1)?.at ?? kitchen.#seen;
    return ok(kitchen);
  }

  /** Calls back after every change, when it has reached the disk. @returns what stops it */
  listen(listener: (announcement: Announcement) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  /** The evening being cooked; null when the kitchen is free. */
  cooking(): { readonly session: string; readonly meal: string } | null {
    const meal = this.#evening?.log.session?.meal;
    return this.#evening === null || meal === undefined
      ? null
      : { session: this.#evening.session, meal: meal.id };
  }

  /** The same, with what its log folds to and the moment of asking. */
  evening(): CookedEvening | null {
    const state = this.#evening?.log.session ?? null;
    return this.#evening === null || state === null
      ? null
      : { session: this.#evening.session, state, at: this.#now() };
  }

  /** How long this cook takes for a meal's kinds of work; none where the log cannot be read: then the recipes hold. */
  pacesFor(meal: CookingMeal): readonly Pace[] {
    return this.#pacesOf()(meal);
  }

  /** What was noted on the evenings before for a meal's dishes. */
  notesFor(meal: CookingMeal): readonly Note[] {
    return this.#noteBook.for(meal);
  }

  /** The same for any meal, with what is known now. */
  #pacesOf(): PacesOf {
    const known = this.#paceBook.known();
    return (meal) => (known.ok ? pacesFor(meal, known.value) : []);
  }

  /** The meals of the last days, for what a diet counts. Error: one sentence that says why the log cannot be read. */
  eaten(): Eaten {
    const eaten = eatenBefore(this.#parts.store, this.#now());
    return eaten.ok ? eaten : err(storeSentence(eaten.error));
  }

  snapshot(): Snapshot {
    const serverNow = this.#now();
    if (this.#evening === null) return { session: null, events: [], serverNow };
    return { session: this.#evening.session, events: this.#evening.log.events, serverNow };
  }

  /** Begins an evening. The same `id` again names the same evening. */
  begin(message: BeginMessage): Begun {
    const { store, newId } = this.#parts;
    const before = store.begunBy(message.id);
    if (!before.ok) return unwritten(before.error);
    if (before.value !== null) return { ok: true, session: before.value.session };
    const at = this.#now();
    const command = this.#beginning(message, at);
    if (!command.ok) return { ok: false, sentence: command.error };
    const decided = decide(command.value, this.#evening?.log ?? emptyLog);
    if (!decided.ok) return { ok: false, sentence: sentence(decided.error) };
    const session = newId();
    const events = numbered(command.value, emptyLog, decided.value);
    const evening: StoredSession = {
      session,
      begunBy: message.id,
      meal: message.meal,
      begunAt: at,
      endedAt: null,
    };
    const outcome = { ok: true, seq: events.length } as const;
    const written = store.begin(evening, { session, command: message.id, receivedAt: at, outcome, events });
    if (!written.ok) return unwritten(written.error);
    this.#evening = { session, log: appendEvents(emptyLog, events) };
    this.#announce({ type: "snapshot", snapshot: this.snapshot() });
    return { ok: true, session };
  }

  /** Carries an order out, or refuses it with a sentence. The same `id` again gets the same answer and does nothing. */
  order(message: OrderMessage): Acknowledged {
    const known = this.#parts.store.outcomeOf(message.session, message.id);
    if (!known.ok) return unwritten(known.error);
    if (known.value !== null) return known.value;
    const evening = this.#evening;
    if (evening?.session !== message.session) return { ok: false, sentence: sentence({ code: "MealOver" }) };
    const lastAt = evening.log.events.at(-1)?.at ?? null;
    const at = believable(message.at, this.#now(), lastAt);
    return this.#carryOut(evening, { id: message.id, at, order: message.order });
  }

  /**
   * Lays a course that a longer search has found for this evening, and tells every device: they all plan by it. Nothing
   * happens where that would change what has begun or been called, or what comes next. No device can ask for it.
   */
  layCourse(session: string, course: readonly LaidStep[]): Acknowledged {
    const evening = this.#evening;
    const seq = evening?.log.events.at(-1)?.seq ?? 0;
    if (evening?.session !== session) return { ok: true, seq };
    const at = this.#now();
    const command = this.#parts.newId();
    const laid = numbered({ id: command, at }, evening.log, [{ type: "CourseLaid", course }]);
    const log = appendEvents(evening.log, laid);
    if (!mayLay(evening.log, log, at)) return { ok: true, seq };
    const outcome = { ok: true, seq: seq + 1 } as const;
    const written = this.#parts.store.append({ session, command, receivedAt: at, outcome, events: laid });
    if (!written.ok) return unwritten(written.error);
    this.#advance({ session, log }, laid);
    return outcome;
  }

  /** Lets the clock do what is due: puts the next task before the cook. A refusal here is the disk's. */
  tick(): Acknowledged {
    const at = this.#now();
    if (this.#ticked !== null && at - this.#ticked >= asleepMs)
      this.#devicesFirst = instant(at + devicesFirstMs);
    this.#ticked = at;
    const evening = this.#evening;
    if (evening === null || at < this.#devicesFirst)
      return { ok: true, seq: evening?.log.events.at(-1)?.seq ?? 0 };
    const order: Order = { type: "Tick" };
    return this.order({ session: evening.session, id: this.#parts.newId(), at, order });
  }

  /**
   * The kitchen's time. It never goes back while a meal is on: where the machine's clock is set back, it goes on from
   * where it was, so that every timer keeps what it had left. A clock set ahead counts as time that went by, as after
   * a sleep: the two cannot be told apart, and a ring too early burns nothing. The next meal goes by the new time.
   */
  #now(): Instant {
    const wall = this.#parts.now();
    if (this.#evening === null) [this.#aheadMs, this.#seen] = [0, wall];
    this.#aheadMs = Math.max(this.#aheadMs, this.#seen - wall);
    this.#seen = instant(wall + this.#aheadMs);
    return this.#seen;
  }

  #beginning(message: BeginMessage, at: Instant): Result<Command, string> {
    const serveAt = message.serveAt as Instant | null;
    if (serveAt !== null && serveAt <= at)
      return { ok: false, error: sentence({ code: "ServingPast", serveAt }) };
    const found = this.#parts.meal(message.meal, message.servings);
    if (!found.ok) return found;
    // Chosen once and written into the log: every device cooks the same way, and a replay chooses nothing.
    const there = helpers.slice(0, message.helpers ?? 0);
    const pacesOf = this.#pacesOf();
    const meal = inBestWays(found.value, serveAt, at, tasksAtPace(pacesOf), there);
    const paces = pacesOf(meal);
    const swaps = swapsChosen(found.value, message.swaps ?? []);
    if (!swaps.ok) return swaps;
    const lull = this.#paceBook.lull();
    const notes = this.notesFor(meal);
    const noteAnswers = answersTo(notes, message.notes);
    const order: Order = {
      type: "BeginMeal",
      meal,
      serveAt,
      paces,
      helpers: there,
      swaps: swaps.value,
      notes,
      noteAnswers,
    };
    return ok({ id: message.id, at, order: lull === null ? order : { ...order, lull } });
  }

  #carryOut({ session, log }: Evening, command: Command): Acknowledged {
    const decided = decide(command, log);
    const events = decided.ok ? numbered(command, log, decided.value) : [];
    const seq = (log.events.at(-1)?.seq ?? 0) + events.length;
    const outcome: Acknowledged = decided.ok
      ? { ok: true, seq }
      : { ok: false, sentence: sentence(decided.error) };
    // Every device ticks every second: a tick that did nothing is not worth a write.
    if (command.order.type === "Tick" && events.length === 0) return outcome;
    const entry: Entry = { session, command: command.id, receivedAt: this.#now(), outcome, events };
    const written = this.#parts.store.append(entry);
    if (!written.ok) return unwritten(written.error);
    if (events.length > 0) this.#advance({ session, log: appendEvents(log, events) }, events);
    return outcome;
  }

  #advance(evening: Evening, events: Appended["events"]): void {
    const ended = evening.log.session?.phase.state === "ended";
    this.#evening = ended ? null : evening;
    this.#announce({ type: "events", appended: { session: evening.session, events } });
    if (ended) this.#announce({ type: "snapshot", snapshot: this.snapshot() });
  }

  #announce(announcement: Announcement): void {
    for (const listener of this.#listeners) listener(announcement);
  }
}

function unwritten(failure: StoreFailure): { readonly ok: false; readonly sentence: string } {
  return { ok: false, sentence: storeSentence(failure) };
}
