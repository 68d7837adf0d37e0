import { planInputOf } from "../../../core/cook/run-sheet.ts";
import type { Session } from "../../../core/cook/session.ts";
import { lullWork } from "../../../core/plan/lull-work.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import { lullSentences } from "../../../core/talk/lull-words.ts";
import { minutes } from "../../../core/units/quantity.ts";
import type { MealStore } from "../../kitchen/meal-store.ts";
import { Choice } from "../parts/choice.tsx";

interface LullKeysProps {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly store: Pick<MealStore, "give">;
}

const usual = [5, 10, 15, 30];
/** On the screen there is room for the names of so many steps. */
const mostNamed = 8;

/** How long before dinner the cook's hands are to be free, and what stays to do then all the same. */
export function LullKeys({ session, sheet, store }: LullKeysProps) {
  const wished = session.lull === null ? 0 : session.lull / 60;
  const lengths = [...new Set([...usual, wished])].filter((length) => length > 0).toSorted((a, b) => a - b);
  const options = [0, ...lengths].map(
    (length) => [String(length), length === 0 ? "Not at all" : `${length} min`] as const,
  );
  const wish = (value: string): void => {
    const length = Number(value);
    if (length === wished) return;
    store.give([{ type: "SetLull", length: length === 0 ? null : minutes(length) }]);
  };
  const stays =
    session.lull === null
      ? []
      : lullSentences(lullWork(planInputOf(session, session.lastAt), sheet), mostNamed);
  return (
    <>
      <p class="hint">
        Work by hand is done earlier where its recipe allows it; dinner is never later for it. It holds for
        the meals to come too.
      </p>
      <Choice name="Hands free before dinner" options={options} value={String(wished)} onChoose={wish} />
      {stays.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </>
  );
}
