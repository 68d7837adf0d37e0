import type { Happening } from "./events.ts";
import { undoneCommands } from "./fold.ts";
import type { MealLog } from "./session.ts";

/** What comes about without the cook's asking for it, or cannot be taken back. */
const notTheCooks: ReadonlySet<Happening["type"]> = new Set([
  "Undone",
  "TaskCalled",
  "TaskHanded",
  "MealBegun",
  "PaceKnown",
  "LullKept",
  "CourseLaid",
  "NotesOffered",
]);

/** The last command that did something the cook asked for: what "undo" takes back; null when there is none. */
export function lastCommand({ events }: MealLog): string | null {
  const undone = undoneCommands(events);
  const begun = new Set(
    events.flatMap(({ command, happening }) => (happening.type === "MealBegun" ? [command] : [])),
  );
  const last = events.findLast(
    ({ command, happening }) =>
      !undone.has(command) && !begun.has(command) && !notTheCooks.has(happening.type),
  );
  return last?.command ?? null;
}
