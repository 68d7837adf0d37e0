import { useRef } from "preact/hooks";
import type { Session } from "../../../core/cook/session.ts";
import { shortName } from "../../../core/cook/say-call.ts";
import type { Portion, Preparation } from "../../../core/mise/mise.ts";
import { miseOf, preparedOf } from "../../../core/mise/mise.ts";
import { rawCaution, writePreparation } from "../../../core/mise/say-mise.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import { capital } from "../../../core/units/capital.ts";
import type { Clock } from "../../kitchen/clock.ts";
import type { MealStore } from "../../kitchen/meal-store.ts";
import { clockTime } from "../galley.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import { dishMarks } from "../parts/dish-marks.ts";

interface ToPrepareProps {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly clock: Clock;
  readonly store: Pick<MealStore, "give">;
}

/** What is to be prepared before the steps call for it, to be ticked off; what was ticked off may be opened again. */
export function ToPrepare({ session, sheet, clock, store }: ToPrepareProps) {
  const list = useRef<HTMLUListElement>(null);
  const marks = dishMarks(session.meal);
  const open = miseOf(session, sheet, session.lastAt);
  const over = preparedOf(session, sheet);
  const caution = rawCaution(open);
  const tick = ({ portions }: Preparation, isDone: boolean): void => {
    const ids = portions.map(({ id }) => id);
    store.give([{ type: isDone ? "FinishPreparing" : "ReopenPreparing", portions: ids }]);
    // The key that had the focus is gone.
    list.current?.focus();
  };
  const use = ({ id, dish, step, neededAt }: Portion) => (
    <span key={id} class="prepare-for">
      <DishMark mark={marks.get(dish.id)} />
      <span>
        {shortName(dish)}, {clockTime(neededAt, clock)}: {step.title}
      </span>
    </span>
  );
  const row = (one: Preparation, isDone: boolean) => {
    const text = capital(writePreparation(one));
    return (
      <li key={one.portions[0]?.id} class={isDone ? "prepare is-prepared" : "prepare"}>
        <span class="prepare-words">
          <span class="prepare-what">{text}</span>
          {!isDone && one.portions.map(use)}
        </span>
        <button
          type="button"
          class="key key-small"
          aria-label={`${isDone ? "Not yet" : "Done"}: ${text}`}
          onClick={() => tick(one, !isDone)}
        >
          {isDone ? "Not yet" : "Done"}
        </button>
      </li>
    );
  };
  return (
    <>
      {open.length === 0 && <p>Nothing is left to prepare beforehand. Each step says what it needs.</p>}
      <ul class="prepares" ref={list} tabIndex={-1} aria-label="To prepare">
        {open.map((one) => row(one, false))}
        {over.map((one) => row(one, true))}
      </ul>
      {caution !== null && <p class="hint">{caution}</p>}
    </>
  );
}
