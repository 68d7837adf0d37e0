import type { Session } from "../../../core/cook/session.ts";
import type { Galley } from "../galley.ts";
import type { OnDeed } from "../parts/deed.ts";
import { dishMarks } from "../parts/dish-marks.ts";
import { DueNotes } from "./due-notes.tsx";
import { PutAwayRow } from "./put-away-row.tsx";

interface AfterMealProps {
  readonly galley: Galley;
  readonly session: Session;
}

/** What becomes of the rest of each dish, by touch. */
export function AfterMeal({ galley, session }: AfterMealProps) {
  const keeper = galley.house.value;
  const house = keeper?.house.value;
  const marks = dishMarks(session.meal);
  const onDeed: OnDeed = ({ intent, words }) => void galley.caller.touch(intent, words);
  const made = house?.made?.begunAt === session.begunAt ? house.made : null;
  return (
    <>
      <DueNotes due={keeper?.due.value ?? []} onDeed={onDeed} />
      {house !== undefined && made !== null && (
        <section class="left" aria-labelledby="left-title">
          <h2 id="left-title">What is left?</h2>
          <ul class="left-rows">
            {made.dishes.map((dish) => (
              <PutAwayRow
                key={dish.dish}
                dish={dish}
                house={house}
                mark={marks.get(dish.dish)}
                clock={galley.clock}
                onDeed={onDeed}
              />
            ))}
          </ul>
          <p class="left-hint">
            In shallow bowls, within two hours of when it was ready; one hour where it is hotter than 90 °F.
            In doubt throw it out. Your local food code, and your clinician, go first.
          </p>
        </section>
      )}
    </>
  );
}
