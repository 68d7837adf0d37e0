import { useState } from "preact/hooks";
import type { Session } from "../../core/cook/session.ts";
import { spokenRoughly } from "../../core/units/duration.ts";
import { numberWords } from "../../core/units/number-words.ts";
import { between } from "../../core/units/quantity.ts";
import { shortName } from "../../core/cook/say-call.ts";
import { LazyCheck } from "./check/lazy-check.tsx";
import { EarLine } from "./ear/ear-line.tsx";
import type { Galley } from "./galley.ts";
import { AfterMeal } from "./left/after-meal.tsx";
import { DishMark } from "./parts/dish-mark.tsx";
import { dishMarks } from "./parts/dish-marks.ts";

/** What the closing card is made from. */
export interface ClosingCardProps {
  readonly galley: Galley;
  readonly session: Session;
  readonly onLeave: () => void;
}

/** The meal is over: what stood on the table, what becomes of the rest, and the way to the next one. The ear still listens. */
export function ClosingCard({ galley, session, onLeave }: ClosingCardProps) {
  const [isChecking, setChecking] = useState(false);
  const isAsked = galley.house.value?.house.value.made?.begunAt === session.begunAt;
  const marks = dishMarks(session.meal);
  const open = [...session.progress.values()].filter(
    ({ state }) => state === "waiting" || state === "running",
  ).length;
  const end = session.phase.state === "ended" ? session.phase.at : session.lastAt;
  return (
    <main class="closing">
      <h1>{open === 0 ? "Well cooked." : "The meal is over."}</h1>
      <p class="closing-line">
        {open === 0
          ? `${session.meal.name}: ${spokenRoughly(between(session.begunAt, end))} from the first step to the table.`
          : `${session.meal.name} ended with ${numberWords(open)} ${open === 1 ? "step" : "steps"} open.`}
      </p>
      {!isAsked && (
        <ul class="legend" aria-label="What was cooked">
          {session.meal.dishes.map((dish) => (
            <li key={dish.id}>
              <DishMark mark={marks.get(dish.id)} />
              {shortName(dish)}
            </li>
          ))}
        </ul>
      )}
      <p class="closing-care">Is the stove off? Is the oven off? What is left goes into the cold soon.</p>
      <AfterMeal galley={galley} session={session} />
      <button type="button" class="key key-main" onClick={onLeave}>
        Cook something else
      </button>
      <EarLine galley={galley} onCheck={() => setChecking(true)} />
      {isChecking && <LazyCheck galley={galley} session={session} onClose={() => setChecking(false)} />}
    </main>
  );
}
