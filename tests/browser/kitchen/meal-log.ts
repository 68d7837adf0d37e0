import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { parseEvent } from "../../../core/cook/parse.ts";
import type { MealEvent } from "../../../core/cook/events.ts";

/** A command that the server has answered. */
export interface AnsweredCommand {
  readonly id: string;
  /** Null: it was carried out. */
  readonly refusal: string | null;
}

/** The meal log as it lies on the disk, beside the running server. */
export interface WrittenLog {
  readonly events: readonly MealEvent[];
  readonly commands: readonly AnsweredCommand[];
}

/** Reads the only evening in a data folder; an event that cannot be read fails the test. */
export function readMealLog(data: string): WrittenLog {
  const database = new SqliteDatabase(join(data, "stovecall.db"), { readonly: true });
  try {
    const rows = database.prepare("SELECT seq, at, command, happening FROM event ORDER BY seq").all();
    const commands = database.prepare("SELECT id, refusal FROM command ORDER BY received_at, seq").all();
    return { events: rows.map(toEvent), commands: commands as AnsweredCommand[] };
  } finally {
    database.close();
  }
}

function toEvent(row: unknown): MealEvent {
  const { happening, ...rest } = row as { readonly happening: string };
  const event = parseEvent({ ...rest, happening: JSON.parse(happening) as unknown });
  if (!event.ok) throw new Error(`an event of the meal log cannot be read: ${event.error}`);
  return event.value;
}

/** What only puts a step before the cook: which one, and when, is the run sheet's affair. */
const calls: readonly string[] = ["TaskCalled", "TaskChosen", "TaskSetAside"];

/** One line for each event that changed the meal, as a person would tell it: its type and what it is about. */
export function told(events: readonly MealEvent[]): readonly string[] {
  const names = new Map<string, string>();
  return events.flatMap(({ happening }) => {
    if (happening.type === "TimerStarted") names.set(happening.timer, happening.name);
    if (calls.includes(happening.type)) return [];
    const about =
      "timer" in happening
        ? (names.get(happening.timer) ?? "an unknown timer")
        : "task" in happening
          ? happening.task
          : "";
    return [`${happening.type} ${about}`.trim()];
  });
}
