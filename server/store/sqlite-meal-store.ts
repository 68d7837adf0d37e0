import type { Database, Statement } from "better-sqlite3";
import type { MealEvent } from "../../core/cook/events.ts";
import { instant, type Instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import {
  assertContinues,
  endOf,
  type Entry,
  type MealStore,
  type Outcome,
  type StoredSession,
  type StoreFailure,
} from "./meal-store.ts";
import { failureOf } from "./sqlite-failure.ts";

interface EveningRow {
  readonly session: string;
  readonly begun_by: string;
  readonly meal: string;
  readonly begun_at: number;
  readonly ended_at: number | null;
}
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

const columns = "session, begun_by, meal, begun_at, ended_at";

function prepare(database: Database) {
  return {
    current: database.prepare<[], EveningRow>(
      `SELECT ${columns} FROM evening WHERE ended_at IS NULL ORDER BY rowid DESC LIMIT 1`,
    ),
    begunBy: database.prepare<[string], EveningRow>(`SELECT ${columns} FROM evening WHERE begun_by = ?`),
    past: database.prepare<[number], EveningRow>(
      `SELECT ${columns} FROM evening WHERE ended_at IS NOT NULL ORDER BY begun_at DESC, rowid DESC LIMIT ?`,
    ),
    paceForgottenAt: database.prepare<[], number | null>("SELECT max(at) FROM pace_forgotten").pluck(),
    forgetPace: database.prepare<[number]>("INSERT INTO pace_forgotten (at) VALUES (?)"),
    events: database.prepare<[string], EventRow>(
      "SELECT seq, at, command, happening FROM event WHERE session = ? ORDER BY seq",
    ),
    outcome: database.prepare<[string, string], CommandRow>(
      "SELECT seq, refusal FROM command WHERE session = ? AND id = ?",
    ),
    lastSeq: database
      .prepare<[string], number>("SELECT coalesce(max(seq), 0) FROM event WHERE session = ?")
      .pluck(),
    addEvening: database.prepare<[string, string, string, number]>(
      "INSERT INTO evening (session, begun_by, meal, begun_at) VALUES (?, ?, ?, ?)",
    ),
    addCommand: database.prepare<[string, string, number, number, string | null]>(
      "INSERT INTO command (session, id, received_at, seq, refusal) VALUES (?, ?, ?, ?, ?)",
    ),
    addEvent: database.prepare<[string, number, number, string, string]>(
      "INSERT INTO event (session, seq, at, command, happening) VALUES (?, ?, ?, ?, ?)",
    ),
    end: database.prepare<[number, string]>(
      "UPDATE evening SET ended_at = ? WHERE session = ? AND ended_at IS NULL",
    ),
  } satisfies Record<string, Statement>;
}

function stored(row: EveningRow | undefined): StoredSession | null {
  return row === undefined ? null : storedRow(row);
}

function storedRow(row: EveningRow): StoredSession {
  return {
    session: row.session,
    begunBy: row.begun_by,
    meal: row.meal,
    begunAt: instant(row.begun_at),
    endedAt: row.ended_at === null ? null : instant(row.ended_at),
  };
}

/** Checks an event as it comes from the disk; the error says what is wrong with it. */
export type ReadEvent = (stored: unknown) => Result<MealEvent, string>;

/** The meal log in a SQLite file that `openMealDatabase` opened; closing the store closes the file. */
export class SqliteMealStore implements MealStore {
  readonly #database: Database;
  readonly #readEvent: ReadEvent;
  readonly #sql: ReturnType<typeof prepare>;
  readonly #addAll: (entry: Entry, evening: StoredSession | null) => void;

  constructor(database: Database, readEvent: ReadEvent) {
    this.#database = database;
    this.#readEvent = readEvent;
    this.#sql = prepare(database);
    const whole = database.transaction((entry: Entry, evening: StoredSession | null) => {
      this.#add(entry, evening);
    });
    this.#addAll = (entry, evening) => whole.immediate(entry, evening);
  }

  current(): ReturnType<MealStore["current"]> {
    return this.#attempt(() => stored(this.#sql.current.get()));
  }

  begunBy(command: string): ReturnType<MealStore["begunBy"]> {
    return this.#attempt(() => stored(this.#sql.begunBy.get(command)));
  }

  load(session: string): ReturnType<MealStore["load"]> {
    const rows = this.#attempt(() => this.#sql.events.all(session));
    if (!rows.ok) return rows;
    const events: MealEvent[] = [];
    for (const row of rows.value) {
      const event = this.#readEvent({ ...row, happening: JSON.parse(row.happening) as unknown });
      if (!event.ok) {
        const detail = `event ${row.seq}: ${event.error}`;
        return err({ code: "Damaged", place: this.#database.name, detail });
      }
      events.push(event.value);
    }
    return ok(events);
  }

  outcomeOf(session: string, command: string): ReturnType<MealStore["outcomeOf"]> {
    return this.#attempt((): Outcome | null => {
      const row = this.#sql.outcome.get(session, command);
      if (row === undefined) return null;
      return row.refusal === null ? { ok: true, seq: row.seq } : { ok: false, sentence: row.refusal };
    });
  }

  begin(evening: StoredSession, first: Entry): ReturnType<MealStore["begin"]> {
    return this.#attempt(() => (this.#addAll(first, evening), null));
  }

  append(entry: Entry): ReturnType<MealStore["append"]> {
    return this.#attempt(() => (this.#addAll(entry, null), null));
  }

  past(most: number): ReturnType<MealStore["past"]> {
    return this.#attempt(() => this.#sql.past.all(most).map(storedRow));
  }

  paceForgottenAt(): ReturnType<MealStore["paceForgottenAt"]> {
    return this.#attempt(() => {
      const at = this.#sql.paceForgottenAt.get() ?? null;
      return at === null ? null : instant(at);
    });
  }

  forgetPace(at: Instant): ReturnType<MealStore["forgetPace"]> {
    return this.#attempt(() => (this.#sql.forgetPace.run(at), null));
  }

  close(): void {
    this.#database.close();
  }

  #add(entry: Entry, evening: StoredSession | null): void {
    const { session, command, outcome } = entry;
    const lastSeq = this.#sql.lastSeq.get(session) ?? 0;
    assertContinues(entry, lastSeq);
    if (evening !== null) this.#sql.addEvening.run(session, evening.begunBy, evening.meal, evening.begunAt);
    const seq = lastSeq + entry.events.length;
    this.#sql.addCommand.run(session, command, entry.receivedAt, seq, outcome.ok ? null : outcome.sentence);
    for (const event of entry.events) {
      this.#sql.addEvent.run(session, event.seq, event.at, command, JSON.stringify(event.happening));
    }
    const endedAt = endOf(entry);
    if (endedAt !== null) this.#sql.end.run(endedAt, session);
  }

  #attempt<T>(work: () => T): Result<T, StoreFailure> {
    try {
      return ok(work());
    } catch (problem) {
      return err(failureOf(problem, this.#database.name));
    }
  }
}
