import { useState } from "preact/hooks";
import { storedOf } from "../../../core/house/decide.ts";
import type { House } from "../../../core/house/house.ts";
import type { Leftover, MadeDish, Place } from "../../../core/house/leftover.ts";
import { servingsFigure, servingsWords } from "../../../core/house/servings-words.ts";
import { fromNumber, ratio, sub, toNumber } from "../../../core/units/rational.ts";
import type { Clock } from "../../kitchen/clock.ts";
import { Counter } from "../parts/counter.tsx";
import type { OnDeed } from "../parts/deed.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import type { DishMark as Mark } from "../parts/dish-marks.ts";
import { amountFigure, dayFigure, standingFigure, standingSource } from "./left-figures.ts";

interface PutAwayRowProps {
  readonly dish: MadeDish;
  readonly house: House;
  readonly mark: Mark | undefined;
  readonly clock: Clock;
  readonly onDeed: OnDeed;
}

/** One dish of the meal: how much of it is left and where it goes, or where it is. */
export function PutAwayRow({ dish, house, mark, clock, onDeed }: PutAwayRowProps) {
  const stored = [...house.leftovers.values()].filter(
    ({ of }) => of?.dish === dish.dish && of.session === house.made?.session,
  );
  const most = toNumber(sub(ratio(dish.yield.servings), storedOf(house, dish.dish)));
  const isOver = house.finished.has(dish.dish) || stored.length > 0;
  return (
    <li class="left-row">
      <h3>
        <DishMark mark={mark} />
        {dish.name}
      </h3>
      {stored.map((leftover) => (
        <Stored key={leftover.id} leftover={leftover} clock={clock} />
      ))}
      {stored.length === 0 && house.finished.has(dish.dish) && <p class="left-where">Nothing is left.</p>}
      {!isOver && <Open dish={dish} most={most} onDeed={onDeed} />}
    </li>
  );
}

function Stored({ leftover, clock }: { readonly leftover: Leftover; readonly clock: Clock }) {
  return (
    <p class="left-where">
      {leftover.heatedAt === null ? (
        <>
          {amountFigure(leftover)} in the {leftover.place}, use by <b>{dayFigure(leftover.useBy, clock)}</b>
        </>
      ) : (
        <>
          {amountFigure(leftover)}. <b>{standingFigure(leftover, clock)}</b>
        </>
      )}
      <small>{standingSource(leftover)}</small>
    </p>
  );
}

interface OpenProps {
  readonly dish: MadeDish;
  readonly most: number;
  readonly onDeed: OnDeed;
}

function Open({ dish, most, onDeed }: OpenProps) {
  const [count, setCount] = useState(Math.min(1, most));
  const { of } = dish.yield;
  const what = { by: "dish", dish: dish.dish } as const;
  const put = (place: Place) => (): void =>
    onDeed({
      label: place,
      intent: { type: "PutAway", what, servings: count, place },
      words: `put ${servingsWords(fromNumber(count), of)} of the ${dish.name.toLowerCase()} in the ${place}`,
    });
  const eaten = (): void =>
    onDeed({
      label: "eaten",
      intent: { type: "NothingLeft", what },
      words: `nothing is left of the ${dish.name.toLowerCase()}`,
    });
  return (
    <>
      <Counter
        name={`Left of ${dish.name}`}
        value={servingsFigure(fromNumber(count), of)}
        onLess={count > 0.5 ? () => setCount(count - 0.5) : null}
        onMore={count < most ? () => setCount(Math.min(most, count + 0.5)) : null}
      />
      <div class="deed-keys">
        <Key text="Into the fridge" dish={dish} onTouch={put("fridge")} />
        <Key text="Into the freezer" dish={dish} onTouch={put("freezer")} />
        <Key text="All eaten" dish={dish} onTouch={eaten} />
      </div>
    </>
  );
}

interface KeyProps {
  readonly text: string;
  readonly dish: MadeDish;
  readonly onTouch: () => void;
}

function Key({ text, dish, onTouch }: KeyProps) {
  return (
    <button type="button" class="key key-small" aria-label={`${text}: ${dish.name}`} onClick={onTouch}>
      {text}
    </button>
  );
}
