import { useState } from "preact/hooks";
import type { TimerId } from "../../../core/cook/orders.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { OnDeed } from "../parts/deed.ts";
import { dishMarks } from "../parts/dish-marks.ts";
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
  const [open, setOpen] = useState<TimerId | null>(null);
  const timers = railOrder(session.timers.values(), now);
  const marks = dishMarks(session.meal);
  const chosen = open === null ? undefined : session.timers.get(open);
  return (
    <section class="rail" aria-labelledby="rail-title">
      <h2 id="rail-title" class="unseen">
        Timers
      </h2>
      {timers.length === 0 ? (
        <p class="rail-empty">
          No timer is running. Steps start their own; yours starts with “timer for ten minutes”.
        </p>
      ) : (
        <ul class={`tiles tiles-${Math.min(timers.length, 5)}`}>
          {timers.map((timer, index) => (
            <Tile
              key={timer.id}
              timer={timer}
              figures={timerFigures(timer, now, (at) => clockOf(at).replace(/ [ap]m$/, ""))}
              mark={timer.dish === null ? undefined : marks.get(timer.dish)}
              size={index === 0 ? "first" : "other"}
              onOpen={() => setOpen(timer.id)}
              onDeed={onDeed}
            />
          ))}
        </ul>
      )}
      {chosen !== undefined && <TimerSheet timer={chosen} onDeed={onDeed} onClose={() => setOpen(null)} />}
    </section>
  );
}
