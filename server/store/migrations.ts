import type { Database } from "better-sqlite3";

/**
 * The shape of the meal log's file, one step after another; a step that has been released never changes.
 * The log only grows: triggers refuse what would rewrite it.
 */
const migrations: readonly string[] = [
  `
  CREATE TABLE evening (
    session   TEXT PRIMARY KEY,
    begun_by  TEXT NOT NULL UNIQUE,
    meal      TEXT NOT NULL,
    begun_at  INTEGER NOT NULL,
    ended_at  INTEGER
  ) STRICT;

  CREATE TABLE command (
    session     TEXT NOT NULL REFERENCES evening (session),
    id          TEXT NOT NULL,
    received_at INTEGER NOT NULL,
    seq         INTEGER NOT NULL,
    refusal     TEXT,
    PRIMARY KEY (session, id)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE event (
    session   TEXT NOT NULL,
    seq       INTEGER NOT NULL CHECK (seq > 0),
    at        INTEGER NOT NULL,
    command   TEXT NOT NULL,
    happening TEXT NOT NULL CHECK (json_valid(happening)),
    PRIMARY KEY (session, seq),
    FOREIGN KEY (session, command) REFERENCES command (session, id)
  ) STRICT, WITHOUT ROWID;

  CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event
    BEGIN SELECT RAISE(ABORT, 'the meal log only grows'); END;
  CREATE TRIGGER event_is_never_deleted BEFORE DELETE ON event
    BEGIN SELECT RAISE(ABORT, 'the meal log only grows'); END;
  `,
  `
  CREATE TABLE pace_forgotten (
    at INTEGER NOT NULL
  ) STRICT;
  `,
  `
  CREATE TABLE house_command (
    id          TEXT PRIMARY KEY,
    received_at INTEGER NOT NULL,
    seq         INTEGER NOT NULL,
    refusal     TEXT
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE house_event (
    seq       INTEGER PRIMARY KEY CHECK (seq > 0),
    at        INTEGER NOT NULL,
    command   TEXT NOT NULL REFERENCES house_command (id),
    happening TEXT NOT NULL CHECK (json_valid(happening))
  ) STRICT;

  CREATE TRIGGER house_event_is_never_changed BEFORE UPDATE ON house_event
    BEGIN SELECT RAISE(ABORT, 'the household log only grows'); END;
  CREATE TRIGGER house_event_is_never_deleted BEFORE DELETE ON house_event
    BEGIN SELECT RAISE(ABORT, 'the household log only grows'); END;
  `,
];

/**
 * Brings the file to the newest shape, each step whole or not at all.
 * @returns false when the file has more steps than are known here: a newer program wrote it
 */
export function migrate(database: Database): boolean {
  const done = Number(database.pragma("user_version", { simple: true }));
  if (done > migrations.length) return false;
  for (const [index, step] of migrations.entries()) {
    if (index < done) continue;
    database.transaction(() => {
      database.exec(step);
      database.pragma(`user_version = ${index + 1}`);
    })();
  }
  return true;
}
