import type { Leftover } from "../../../core/house/leftover.ts";
import { ONE } from "../../../core/units/rational.ts";
import type { Clock } from "../../kitchen/clock.ts";
import type { OnDeed } from "../parts/deed.ts";
import { amountFigure, dayFigure, sourceWords } from "./left-figures.ts";

interface FridgeRowProps {
  readonly leftover: Leftover;
  readonly clock: Clock;
  readonly onDeed: OnDeed;
}

/** One thing that is left: what, how much, until when; and that some of it was eaten, or that it is gone. */
export function FridgeRow({ leftover, clock, onDeed }: FridgeRowProps) {
  const { id, name, rest, place, useBy } = leftover;
  const isOld = useBy < clock.now.value;
  const isPast = isOld && place === "fridge";
  const what = { by: "leftover", leftover: id } as const;
  const said = name.toLowerCase();
  const hasMore = rest.kind === "servings" && rest.servings !== ONE && !rest.servings.startsWith("1/");
  const ate = (servings: number | null) => (): void =>
    onDeed({
      label: "eaten",
      intent: { type: "AteLeft", what, servings },
      words: servings === null ? `we ate the rest of the ${said}` : `we ate one serving of the ${said}`,
    });
  const throwAway = (): void =>
    onDeed({ label: "thrown away", intent: { type: "ThrewAway", what }, words: `throw away the ${said}` });
  return (
    <li class={`fridge-row ${isPast ? "is-past" : ""}`}>
      <p>
        <b>{name}</b> <span>{amountFigure(leftover)}</span>
        {place === "freezer" && <span>, frozen</span>}
      </p>
      <p class="fridge-day">
        {isPast
          ? "Past its day: throw it away"
          : isOld
            ? "Past its best: use it soon"
            : `Use by ${dayFigure(useBy, clock)}`}
        <small>{sourceWords(leftover)}</small>
      </p>
      <div class="deed-keys">
        {!isPast && hasMore && (
          <button type="button" class="key key-small" aria-label={`One eaten: ${name}`} onClick={ate(1)}>
            One eaten
          </button>
        )}
        {!isPast && (
          <button type="button" class="key key-small" aria-label={`All eaten: ${name}`} onClick={ate(null)}>
            All eaten
          </button>
        )}
        <button type="button" class="key key-small" aria-label={`Thrown away: ${name}`} onClick={throwAway}>
          Thrown away
        </button>
      </div>
    </li>
  );
}
