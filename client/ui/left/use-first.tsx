import { firstToUse } from "../../../core/house/standing.ts";
import type { Galley } from "../galley.ts";
import type { OnDeed } from "../parts/deed.ts";
import { DueNotes } from "./due-notes.tsx";
import { amountFigure, firstFigure } from "./left-figures.ts";

/** Before a meal is chosen: what stands about and must not, and what in the fridge to use first. */
export function UseFirst({ galley }: { readonly galley: Galley }) {
  const keeper = galley.house.value;
  if (keeper === null) return null;
  const onDeed: OnDeed = ({ intent, words }) => void galley.caller.touch(intent, words);
  // What was heated is out of the freezer.
  const [first] = firstToUse(keeper.house.value.leftovers).filter(
    ({ place, heatedAt }) => place === "fridge" || heatedAt !== null,
  );
  const isPast = first !== undefined && first.useBy < galley.clock.now.value;
  if (first === undefined && keeper.due.value.length === 0) return null;
  return (
    <aside class="use-first-place" aria-label="To use first">
      <DueNotes due={keeper.due.value} onDeed={onDeed} />
      {first !== undefined && (
        <p class={`use-first ${isPast ? "is-past" : ""}`}>
          {isPast ? "Throw away" : first.heatedAt === null ? "Use first" : "Eat now"}: <b>{first.name}</b>,{" "}
          {amountFigure(first)}, {firstFigure(first, galley.clock)}
        </p>
      )}
    </aside>
  );
}
