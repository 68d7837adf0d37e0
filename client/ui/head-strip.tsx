import { capital } from "../../core/units/capital.ts";
import { spokenRoughly } from "../../core/units/duration.ts";
import type { Session } from "../../core/cook/session.ts";
import type { RunSheet } from "../../core/plan/model.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Deed, OnDeed } from "./parts/deed.ts";

interface HeadStripProps {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly now: Instant;
  readonly clockOf: (at: Instant) => string;
  readonly onDeed: OnDeed;
  readonly onNewTimer: () => void;
  readonly onOpenKitchen: () => void;
}

const hold: Deed = { label: "Hold everything", intent: { type: "HoldEverything" }, words: "hold everything" };
const goOn: Deed = { label: "Go on", intent: { type: "GoOn" }, words: "go on" };
const undo: Deed = { label: "Undo", intent: { type: "UndoThat" }, words: "undo that" };

/** The time, when we eat, and the way to everything else. */
export function HeadStrip({
  session,
  sheet,
  now,
  clockOf,
  onDeed,
  onNewTimer,
  onOpenKitchen,
}: HeadStripProps) {
  const pause = session.phase.state === "held" ? goOn : hold;
  return (
    <header class="head">
      <p class="head-clock">{clockOf(now)}</p>
      <p class={`head-serving ${sheet.late > 60 ? "is-late" : ""}`}>
        <span class="head-meal">{session.meal.name}</span> <b>on the table {clockOf(sheet.readyAt)}</b>{" "}
        <span>{punctuality(session, sheet)}</span>
      </p>
      <nav class="head-keys" aria-label="The meal">
        <button type="button" class="key key-small" onClick={onNewTimer}>
          New timer
        </button>
        {[undo, pause].map((deed) => (
          <button key={deed.label} type="button" class="key key-small" onClick={() => onDeed(deed)}>
            {deed.label}
          </button>
        ))}
        <button type="button" class="key key-small" onClick={onOpenKitchen}>
          Kitchen
        </button>
      </nav>
    </header>
  );
}

function punctuality({ serveAt }: Session, { late }: RunSheet): string {
  if (serveAt === null) return "as soon as it is ready";
  return late > 60 ? `${capital(spokenRoughly(late))} late` : "in time";
}
