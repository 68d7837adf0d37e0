import { useState } from "preact/hooks";
import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { OnDeed } from "../parts/deed.ts";
import { useWidth } from "../parts/use-width.ts";
import { eveningLayout } from "./evening-layout.ts";
import { EveningSheet } from "./evening-sheet.tsx";
import { heatCurve } from "./heat-curve.ts";
import { LanePicture } from "./lane-picture.tsx";

/** What both pictures of the evening are drawn from. */
export interface EveningProps {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly now: Instant;
  readonly clockOf: (at: Instant) => string;
  readonly utcOffsetMinutes: number;
  readonly onDeed: OnDeed;
  readonly onHear: (sentence: string) => void;
}

/** The evening at a glance; a touch lays it out large. */
export function EveningBand(props: EveningProps) {
  const { session, sheet, now, clockOf, utcOffsetMinutes } = props;
  const [isOpen, setOpen] = useState(false);
  const [box, width] = useWidth<HTMLSpanElement>();
  const evening = eveningLayout(session, sheet, now);
  const ovens = session.meal.kitchen.ovens.map(({ name }) => [name, heatCurve(name, session, sheet, evening.from, evening.to)] as const);
  const size = { width, rowHeight: 13, gutter: 66, axis: 18 };
  return (
    <section class="evening" aria-labelledby="evening-title">
      <h2 id="evening-title" class="unseen">
        The evening
      </h2>
      <button type="button" class="evening-face" aria-label="Lay the whole evening out" onClick={() => setOpen(true)}>
        <span class="evening-box" ref={box}>
          {width > 0 && <LanePicture evening={evening} heats={new Map(ovens)} size={size} clockOf={clockOf} utcOffsetMinutes={utcOffsetMinutes} />}
        </span>
      </button>
      {isOpen && <EveningSheet {...props} onClose={() => setOpen(false)} />}
    </section>
  );
}
