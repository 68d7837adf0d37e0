import type { Database, Statement } from "better-sqlite3";
import type { HouseEvent } from "../../core/house/events.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { HouseEntry, HouseStore } from "./house-store.ts";
import { assertContinues, type Outcome, type StoreFailure } from "./meal-store.ts";
import { failureOf } from "./sqlite-failure.ts";

interface EventRow {
  readonly seq: number;
  readonly at: number;
  readonly command: string;
  readonly happening: string;
}
interface CommandRow {
  readonly seq: number;
  readonly refusal: string | null;
}

function prepare(database: Database) {
  return {
    events: database.prepare<[], EventRow>(
      "SELECT seq, at, command, happening FROM house_event ORDER BY seq",
    ),
    outcome: database.prepare<[string], CommandRow>("SELECT seq, refusal FROM house_command WHERE id = ?"),
    lastSeq: database.prepare<[], number>("SELECT coalesce(max(seq), 0) FROM house_event").pluck(),
    addCommand: database.prepare<[string, number, number, string | null]>(
      "INSERT INTO house_command (id, received_at, seq, refusal) VALUES (?, ?, ?, ?)",
    ),
    addEvent: database.prepare<[number, number, string, string]>(
      "INSERT INTO house_event (seq, at, command, happening) VALUES (?, ?, ?, ?)",
    ),
  } satisfies Record<string, Statement>;
}

/** Checks an event as it comes from the disk; the error says what is wrong with it. */
type ReadEvent = (stored: unknown) => Result<HouseEvent, string>;

/** The household log in the file of the meal log, which `openMealDatabase` opened and the meal store closes. */
export class SqliteHouseStore implements HouseStore {
  readonly #database: Database;
  readonly #readEvent: ReadEvent;
  readonly #sql: ReturnType<typeof prepare>;
  readonly #addAll: (entry: HouseEntry) => void;

  constructor(database: Database, readEvent: ReadEvent) {
    this.#database = database;
    this.#readEvent = readEvent;
    this.#sql = prepare(database);
    const whole = database.transaction((entry: HouseEntry) => {
      this.#add(entry);
    });
    this.#addAll = (entry) => whole.immediate(entry);
  }

  load(): ReturnType<HouseStore["load"]> {
    const rows = this.#attempt(() => this.#sql.events.all());
    if (!rows.ok) return rows;
    const events: HouseEvent[] = [];
    for (const row of rows.value) {
      const event = this.#readEvent({ ...row, happening: JSON.parse(row.happening) as unknown });
      if (!event.ok) {
        const detail = `event ${row.seq} of the house: ${event.error}`;
        return err({ code: "Damaged", place: this.#database.name, detail });
      }
      events.push(event.value);
    }
    return ok(events);
  }

  outcomeOf(command: string): ReturnType<HouseStore["outcomeOf"]> {
    return this.#attempt((): Outcome | null => {
      const row = this.#sql.outcome.get(command);
      if (row === undefined) return null;
      return row.refusal === null ? { ok: true, seq: row.seq } : { ok: false, sentence: row.refusal };
    });
  }

  append(entry: HouseEntry): ReturnType<HouseStore["append"]> {
    return this.#attempt(() => (this.#addAll(entry), null));
  }

  #add({ command, receivedAt, outcome, events }: HouseEntry): void {
    const lastSeq = this.#sql.lastSeq.get() ?? 0;
    assertContinues({ command, events }, lastSeq);
    const seq = lastSeq + events.length;
    this.#sql.addCommand.run(command, receivedAt, seq, outcome.ok ? null : outcome.sentence);
    for (const event of events) {
      this.#sql.addEvent.run(event.seq, event.at, command, JSON.stringify(event.happening));
    }
  }

  #attempt<T>(work: () => T): Result<T, StoreFailure> {
    try {
      return ok(work());
    } catch (problem) {
      return err(failureOf(problem, this.#database.name));
    }
  }
}
