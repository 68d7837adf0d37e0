import type { Leftover } from "../../../core/house/leftover.ts";
import { standingOf } from "../../../core/house/standing.ts";
import { ONE } from "../../../core/units/rational.ts";
import type { Clock } from "../../kitchen/clock.ts";
import type { OnDeed } from "../parts/deed.ts";
import { amountFigure, standingFigure, standingSource } from "./left-figures.ts";
import { WarmUp } from "./warm-up.tsx";

interface FridgeRowProps {
  readonly leftover: Leftover;
  readonly clock: Clock;
  readonly onDeed: OnDeed;
}

/** One thing that is left: what, how much, until when; and that some of it was eaten, or that it is gone. */
export function FridgeRow({ leftover, clock, onDeed }: FridgeRowProps) {
  const { id, name, rest, place, heatedAt } = leftover;
  const standing = standingOf(leftover, clock.now.value);
  const isPast = standing === "spent" || standing === "heated-long";
  const isCold = standing === "good" || standing === "past-best";
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
    <li class={`fridge-row ${isPast ? "is-past" : heatedAt === null ? "" : "is-heated"}`}>
      <p>
        <b>{name}</b> <span>{amountFigure(leftover)}</span>
        {heatedAt === null ? place === "freezer" && <span>, frozen</span> : <span>, heated</span>}
      </p>
      <p class="fridge-day">
        {standingFigure(leftover, clock)}
        <small>{standingSource(leftover)}</small>
      </p>
      <div class="deed-keys">
        {!isPast && hasMore && (
          <button type="button" class="key key-small" aria-label={`One eaten: ${name}`} onClick={ate(1)}>
            One eaten
          </button>
        )}
        {standing !== "spent" && (
          <button type="button" class="key key-small" aria-label={`All eaten: ${name}`} onClick={ate(null)}>
            All eaten
          </button>
        )}
        <button type="button" class="key key-small" aria-label={`Thrown away: ${name}`} onClick={throwAway}>
          Thrown away
        </button>
        {isCold && <WarmUp leftover={leftover} onDeed={onDeed} />}
      </div>
    </li>
  );
}
