import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import { minuteOfDay } from "../../../core/talk/minute-of-day.ts";
import { plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { Clock } from "../../kitchen/clock.ts";
import { clockTime } from "../galley.ts";
import type { OnDeed } from "../parts/deed.ts";
import { Counter } from "../parts/counter.tsx";
import { servingStep } from "../start/serving-time.ts";

interface ServingKeysProps {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly clock: Clock;
  readonly onDeed: OnDeed;
}

/** Dinner a quarter of an hour earlier or later, or as soon as it is ready. */
export function ServingKeys({ session, sheet, clock, onDeed }: ServingKeysProps) {
  const base = session.serveAt ?? sheet.readyAt;
  const move = (by: 1 | -1) => () => {
    const quarter = Math.round(base / (servingStep * 1000)) * servingStep * 1000;
    const at = plus(quarter as Instant, (by * servingStep) as typeof servingStep);
    const minute = minuteOfDay({ now: at, utcOffsetMinutes: clock.utcOffsetMinutes });
    onDeed({
      label: "Serving time",
      intent: { type: "ServeAt", minute },
      words: `we eat at ${clockTime(at, clock)}`,
    });
  };
  return (
    <div class="choices">
      <Counter
        name="On the table"
        value={session.serveAt === null ? "when it is ready" : clockTime(session.serveAt, clock)}
        onLess={move(-1)}
        onMore={move(1)}
      />
      {session.serveAt !== null && (
        <button
          type="button"
          class="key"
          onClick={() =>
            onDeed({
              label: "As soon as it is ready",
              intent: { type: "ServeSoonest" },
              words: "we eat when it is ready",
            })
          }
        >
          As soon as it is ready
        </button>
      )}
    </div>
  );
}
