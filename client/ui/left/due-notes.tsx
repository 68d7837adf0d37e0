import type { Reminder } from "../../../core/house/reminders.ts";
import { sources } from "../../../core/keeping/sources-table.ts";
import type { OnDeed } from "../parts/deed.ts";

interface DueNotesProps {
  readonly due: readonly Reminder[];
  readonly onDeed: OnDeed;
}

/** What has to be said of the food now, with its source, and the key that silences it. */
export function DueNotes({ due, onDeed }: DueNotesProps) {
  if (due.length === 0) return null;
  const silence = (): void =>
    onDeed({ label: "silence", intent: { type: "NoReminders" }, words: "no reminders about leftovers" });
  return (
    <div class="left-due" role="status">
      {due.map(({ key, say, source }) => (
        <p key={key}>
          {say} <small>{sources[source].name}</small>
        </p>
      ))}
      <button type="button" class="key key-small" onClick={silence}>
        No more reminders
      </button>
    </div>
  );
}
