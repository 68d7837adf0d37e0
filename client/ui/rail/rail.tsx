import { useState } from "preact/hooks";
import type { TimerId } from "../../../core/cook/orders.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { OnDeed } from "../parts/deed.ts";
import { dishMarks } from "../parts/dish-marks.ts";
import { NewTimer } from "./new-timer.tsx";
import { Tile } from "./tile.tsx";
import { railOrder, timerFigures } from "./timer-figures.ts";
import { TimerSheet } from "./timer-sheet.tsx";

interface RailProps {
  readonly session: Session;
  readonly now: Instant;
  readonly clockOf: (at: Instant) => string;
  readonly onDeed: OnDeed;
}

/** All timers, the next to ring first and largest. */
export function Rail({ session, now, clockOf, onDeed }: RailProps) {
  const [open, setOpen] = useState<TimerId | "new" | null>(null);
  const timers = railOrder(session.timers.values(), now);
  const marks = dishMarks(session.meal);
  const close = (): void => setOpen(null);
  const chosen = open === null || open === "new" ? undefined : session.timers.get(open);
  return (
    <section class="rail" aria-labelledby="rail-title">
      <header class="rail-head">
        <h2 id="rail-title">{timers.length === 0 ? "No timer is running" : "Timers"}</h2>
        <button type="button" class="key key-small" onClick={() => setOpen("new")}>
          New timer
        </button>
      </header>
      {timers.length > 0 && (
        <ul class={`tiles tiles-${Math.min(timers.length, 5)}`}>
          {timers.map((timer, index) => (
            <Tile
              key={timer.id}
              timer={timer}
              figures={timerFigures(timer, now, clockOf)}
              mark={timer.dish === null ? undefined : marks.get(timer.dish)}
              size={index === 0 ? "first" : "other"}
              onOpen={() => setOpen(timer.id)}
              onDeed={onDeed}
            />
          ))}
        </ul>
      )}
      {chosen !== undefined && <TimerSheet timer={chosen} onDeed={onDeed} onClose={close} />}
      {open === "new" && <NewTimer onDeed={onDeed} onClose={close} />}
    </section>
  );
}
