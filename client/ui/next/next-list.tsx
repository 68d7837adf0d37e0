import type { DishId } from "../../../core/recipe/model.ts";
import { capital } from "../../../core/units/capital.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import type { DishMark as Mark } from "../parts/dish-marks.ts";
import type { NextThing } from "./next-things.ts";

interface NextListProps {
  readonly things: readonly NextThing[];
  readonly marks: ReadonlyMap<DishId, Mark>;
}

/** What comes after this. */
export function NextList({ things, marks }: NextListProps) {
  return (
    <section class="next" aria-labelledby="next-title">
      <h2 id="next-title">After this</h2>
      {things.length === 0 ? (
        <p class="hint">Nothing more. Then we eat.</p>
      ) : (
        <ol>
          {things.map((thing) => (
            <li key={thing.key}>
              <DishMark mark={thing.dish === null ? { letter: "°", colour: 0 } : marks.get(thing.dish)} />
              <span class="next-title">{capital(thing.title)}</span>
              <span class="next-when">{thing.when}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
