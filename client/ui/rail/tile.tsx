import type { Timer } from "../../../core/cook/session.ts";
import { capital } from "../../../core/units/capital.ts";
import { minutes } from "../../../core/units/quantity.ts";
import type { Deed, OnDeed } from "../parts/deed.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import type { DishMark as Mark } from "../parts/dish-marks.ts";
import type { TimerFigures } from "./timer-figures.ts";

interface TileProps {
  readonly timer: Timer;
  readonly figures: TimerFigures;
  readonly mark: Mark | undefined;
  readonly size: "first" | "other";
  readonly onOpen: () => void;
  readonly onDeed: OnDeed;
}

/** One timer. A touch opens what can be done with it; a ringing one carries its answers itself. */
export function Tile({ timer, figures, mark, size, onOpen, onDeed }: TileProps) {
  const { state, digits, seconds, line } = figures;
  return (
    <li class={`tile tile-${size} tile-${state} ${mark === undefined ? "" : `dish-${mark.colour}`}`}>
      <button type="button" class="tile-face" onClick={onOpen}>
        <span class="tile-name">
          <DishMark mark={mark} />
          <span>{capital(timer.name)}</span>
        </span>
        <span class="tile-digits" role="timer">
          {digits}
          {seconds !== "" && <small>{seconds}</small>}
        </span>
        <span class="tile-line">{line}</span>
        <Bar figures={figures} />
      </button>
      {state === "ringing" && <RingKeys timer={timer} onDeed={onDeed} />}
    </li>
  );
}

function Bar({ figures }: { readonly figures: TimerFigures }) {
  return (
    <span class="bar" aria-hidden="true">
      <span class="bar-full" style={{ width: `${figures.part * 100}%` }} />
      {figures.lookPart !== null && <span class="bar-look" style={{ left: `${figures.lookPart * 100}%` }} />}
    </span>
  );
}

function RingKeys({ timer, onDeed }: Pick<TileProps, "timer" | "onDeed">) {
  const by = { by: "timer", timer: timer.id } as const;
  const deeds: readonly Deed[] = [
    { label: "I hear it", intent: { type: "HearRing", timer: by }, words: `I hear ${timer.name}` },
    {
      label: "+2 min",
      intent: { type: "Lengthen", timer: by, by: minutes(2) },
      words: `two more minutes for ${timer.name}`,
    },
  ];
  return (
    <div class="tile-keys">
      {deeds.map((deed) => (
        <button
          key={deed.label}
          type="button"
          class="key key-ring"
          aria-label={`${deed.label}: ${timer.name}`}
          onClick={() => onDeed(deed)}
        >
          {deed.label}
        </button>
      ))}
    </div>
  );
}
