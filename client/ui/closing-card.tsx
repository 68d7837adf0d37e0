import type { Session } from "../../core/cook/session.ts";
import { spokenRoughly } from "../../core/units/duration.ts";
import { numberWords } from "../../core/units/number-words.ts";
import { between } from "../../core/units/quantity.ts";
import { shortName } from "../../core/cook/say-call.ts";
import { DishMark } from "./parts/dish-mark.tsx";
import { dishMarks } from "./parts/dish-marks.ts";

interface ClosingCardProps {
  readonly session: Session;
  readonly onLeave: () => void;
}

/** The meal is over: what stood on the table, and the way to the next one. */
export function ClosingCard({ session, onLeave }: ClosingCardProps) {
  const marks = dishMarks(session.meal);
  const open = [...session.progress.values()].filter(
    ({ state }) => state === "waiting" || state === "running",
  ).length;
  const end = session.phase.state === "ended" ? session.phase.at : session.lastAt;
  return (
    <main class="closing">
      <h1>{open === 0 ? "Well cooked." : "Put away."}</h1>
      <p class="closing-line">
        {open === 0
          ? `${session.meal.name}: ${spokenRoughly(between(session.begunAt, end))} from the first step to the table.`
          : `${session.meal.name} ended with ${numberWords(open)} ${open === 1 ? "step" : "steps"} open.`}
      </p>
      <ul class="legend" aria-label="What was cooked">
        {session.meal.dishes.map((dish) => (
          <li key={dish.id}>
            <DishMark mark={marks.get(dish.id)} />
            {shortName(dish)}
          </li>
        ))}
      </ul>
      <p class="closing-care">Is the stove off? Is the oven off? What is left goes into the cold soon.</p>
      <button type="button" class="key key-main" onClick={onLeave}>
        Cook something else
      </button>
    </main>
  );
}
