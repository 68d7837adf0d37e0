import { useState } from "preact/hooks";
import type { MealCard } from "../../../core/sync/protocol.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { Clock } from "../../kitchen/clock.ts";
import { clockTime } from "../galley.ts";
import type { Wanted } from "../../kitchen/meal-store.ts";
import { CooksCounter } from "../parts/cooks-counter.tsx";
import { Counter } from "../parts/counter.tsx";
import { MealNotes } from "./meal-notes.tsx";
import { earliestServing, movedServing, ownServing } from "./serving-time.ts";

interface MealChoicesProps {
  readonly meal: MealCard;
  readonly clock: Clock;
  readonly isBusy: boolean;
  readonly onLight: (wanted: Omit<Wanted, "swaps">) => void;
  readonly onShop: (servings: Wanted["servings"]) => void;
  readonly onLook: (servings: Wanted["servings"]) => void;
}

type Servings = Wanted["servings"];

/** The most that a dish is scaled to in one go. */
const mostServings = 100;

/** For how many and for when; both stand right already, so that the big key is all that is needed. */
export function MealChoices({ meal, clock, isBusy, onLight, onShop, onLook }: MealChoicesProps) {
  const now = clock.now.value;
  const [servings, setServings] = useState<Servings>(() =>
    Object.fromEntries(meal.dishes.map((dish) => [dish.id, dish.servings])),
  );
  const [asked, setAsked] = useState<Instant | null>(() =>
    ownServing(meal.serveAt, meal.takesMinutes, now, clock.utcOffsetMinutes),
  );
  const [cooks, setCooks] = useState(1);
  const [notes, setNotes] = useState<Wanted["notes"]>({});
  const takesMinutes = cooks === 1 ? meal.takesMinutes : (meal.takesWithHelp[cooks - 2] ?? meal.takesMinutes);
  // A card left open for long must not ask for a time that cannot be reached any more.
  const serveAt = asked !== null && asked < earliestServing(takesMinutes, now) ? null : asked;
  const all = Object.values(servings);
  const move = (by: 1 | -1): void =>
    setServings(Object.fromEntries(Object.entries(servings).map(([id, count]) => [id, within(count + by)])));
  const [least, most] = [Math.min(...all), Math.max(...all)];
  return (
    <>
      <div class="choices">
        <Counter
          name="For how many"
          value={least === most ? String(least) : `${least}–${most}`}
          onLess={least > 1 ? () => move(-1) : null}
          onMore={most < mostServings ? () => move(1) : null}
        />
        <Counter
          name="On the table"
          value={serveAt === null ? "when it is ready" : clockTime(serveAt, clock)}
          onLess={serveAt === null ? null : () => setAsked(movedServing(serveAt, -1, takesMinutes, now))}
          onMore={() => setAsked(movedServing(serveAt, 1, takesMinutes, now))}
        />
        <CooksCounter cooks={cooks} onChange={setCooks} />
      </div>
      <MealNotes notes={meal.notes ?? []} answered={notes} onAnswer={setNotes} />
      <button
        type="button"
        class="key key-main key-light"
        disabled={isBusy}
        onClick={() => onLight({ servings, serveAt, helpers: cooks - 1, notes })}
      >
        {isBusy ? "Lighting it" : "Light the stove"}
      </button>
      <div class="deed-keys">
        <button type="button" class="key" onClick={() => onShop(servings)}>
          What to buy
        </button>
        <button type="button" class="key" onClick={() => onLook(servings)}>
          What is in it
        </button>
      </div>
      <details class="each">
        <summary>Each dish by itself</summary>
        <div class="choices">
          {meal.dishes.map((dish) => {
            const count = servings[dish.id] ?? dish.servings;
            const set = (next: number) => () => setServings({ ...servings, [dish.id]: within(next) });
            return (
              <Counter
                key={dish.id}
                name={dish.name}
                value={`${count} ${dish.of}`}
                onLess={count > 1 ? set(count - 1) : null}
                onMore={count < mostServings ? set(count + 1) : null}
              />
            );
          })}
        </div>
      </details>
    </>
  );
}

const within = (count: number): number => Math.min(mostServings, Math.max(1, count));
