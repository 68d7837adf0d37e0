import type { NoteAnswer } from "../../../core/next-time/note.ts";
import type { MealCard } from "../../../core/sync/protocol.ts";
import type { Wanted } from "../../kitchen/meal-store.ts";
import { Choice } from "../parts/choice.tsx";

const answers = [
  ["open", "Ask me later"],
  ["applied", "Yes, tonight"],
  ["kept", "Not tonight"],
  ["dropped", "Drop it"],
] as const;

const answerOf = (value: string): NoteAnswer | null =>
  value === "applied" || value === "kept" || value === "dropped" ? value : null;

interface MealNotesProps {
  readonly notes: NonNullable<MealCard["notes"]>;
  readonly answered: Wanted["notes"];
  readonly onAnswer: (answered: Wanted["notes"]) => void;
}

/** What was noted on evenings before for a meal's dishes; nothing is done without a yes. */
export function MealNotes({ notes, answered, onAnswer }: MealNotesProps) {
  if (notes.length === 0) return null;
  const answer = (key: string, value: string): void => {
    const others = Object.entries(answered).filter(([other]) => other !== key);
    const said = answerOf(value);
    onAnswer(Object.fromEntries(said === null ? others : [...others, [key, said]]));
  };
  return (
    <section class="card-asks" aria-label="From last time">
      <h2>From last time</h2>
      <ul>
        {notes.map(({ key, ask }) => (
          <li key={key}>
            <p>{ask}</p>
            <Choice
              name={ask}
              options={answers}
              value={answered[key] ?? "open"}
              onChoose={(value) => answer(key, value)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
