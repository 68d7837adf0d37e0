import { useState } from "preact/hooks";
import { useWidth } from "../parts/use-width.ts";
import { eveningLayout } from "./evening-layout.ts";
import type { EveningProps } from "./evening-props.ts";
import { EveningSheet } from "./evening-sheet.tsx";
import { heatCurve } from "./heat-curve.ts";
import { LanePicture } from "./lane-picture.tsx";

/** The evening at a glance; a touch lays it out large. */
export function EveningBand(props: EveningProps) {
  const { session, sheet, now, clockOf, utcOffsetMinutes } = props;
  const [isOpen, setOpen] = useState(false);
  const [box, width] = useWidth<HTMLDivElement>();
  const evening = eveningLayout(session, sheet, now);
  const ovens = session.meal.kitchen.ovens.map(
    ({ name }) => [name, heatCurve(name, session, sheet, evening.from, evening.to)] as const,
  );
  const size = { width, rowHeight: 13, gutter: 66, axis: 18 };
  return (
    <section class="evening" aria-labelledby="evening-title">
      <h2 id="evening-title" class="unseen">
        The evening
      </h2>
      <div class="evening-face">
        <div class="evening-box" ref={box}>
          {width > 0 && (
            <LanePicture
              evening={evening}
              heats={new Map(ovens)}
              size={size}
              clockOf={clockOf}
              utcOffsetMinutes={utcOffsetMinutes}
            />
          )}
        </div>
        <button
          type="button"
          class="evening-open"
          aria-label="Lay the whole evening out"
          onClick={() => setOpen(true)}
        />
      </div>
      {isOpen && <EveningSheet {...props} onClose={() => setOpen(false)} />}
    </section>
  );
}
