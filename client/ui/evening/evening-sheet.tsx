import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { sayStep, shortName } from "../../../core/cook/say-call.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { TaskId } from "../../../core/plan/model.ts";
import { capital } from "../../../core/talk/speech.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import { dishMarks } from "../parts/dish-marks.ts";
import { Sheet } from "../parts/sheet.tsx";
import { useWidth } from "../parts/use-width.ts";
import { CalendarKey } from "./calendar-key.tsx";
import type { EveningProps } from "./evening-props.ts";
import { eveningLayout } from "./evening-layout.ts";
import { heatCurve } from "./heat-curve.ts";
import { LanePicture } from "./lane-picture.tsx";
import { PickedStep } from "./picked-step.tsx";

/** An hour gets at least this much room, in CSS pixels: a narrow screen scrolls. */
const leastHour = 520;
const gutter = 110;

/** The evening laid out large: every step can be picked, heard, and taken up now. */
export function EveningSheet(props: EveningProps & { readonly onClose: () => void }) {
  const { session, sheet, now, clockOf, utcOffsetMinutes, onDeed, onHear, onClose } = props;
  const [picked, setPicked] = useState<TaskId | null>(session.focus?.task ?? null);
  const [box, seen] = useWidth<HTMLDivElement>();
  const evening = eveningLayout(session, sheet, now);
  const ovens = session.meal.kitchen.ovens.map(
    ({ name }) => [name, heatCurve(name, session, sheet, evening.from, evening.to)] as const,
  );
  const width = Math.max(seen, gutter + ((evening.to - evening.from) / 3_600_000) * leastHour);
  const share = (now - evening.from) / Math.max(1, evening.to - evening.from);
  const isMeasured = seen > 0;
  const left = useRef(0);
  left.current = gutter + (width - gutter) * share - seen / 3;
  useLayoutEffect(() => {
    // The line of now stands a third of the way in, so that more of what comes can be seen; after that the cook's
    // own scrolling counts.
    if (isMeasured) box.current?.scrollTo({ left: left.current });
  }, [isMeasured, box]);
  const task = session.tasks.find((one) => one.id === picked);
  return (
    <Sheet title="The whole evening" kind="wide" onClose={onClose}>
      <Legend session={session} />
      <div class="evening-scroll" ref={box} role="region" aria-label="The evening over time" tabIndex={0}>
        {seen > 0 && (
          <LanePicture
            evening={evening}
            heats={new Map(ovens)}
            size={{ width, rowHeight: 50, gutter, axis: 34 }}
            clockOf={clockOf}
            utcOffsetMinutes={utcOffsetMinutes}
            picked={picked}
            onPick={setPicked}
          />
        )}
      </div>
      {sheet.broken.length > 0 && (
        <ul class="broken">
          {sheet.broken.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {task === undefined ? (
        <p class="hint">Touch a step to read it, hear it, or do it now.</p>
      ) : (
        <PickedStep
          task={task}
          title={`${shortName(task.dish)}: ${capital(task.step.title)}`}
          progress={session.progress.get(task.id) ?? { state: "waiting" }}
          entry={sheet.entries.find((entry) => entry.task === task.id)}
          clockOf={clockOf}
          {...{ session, sheet, now }}
          onDeed={(deed) => {
            onDeed(deed);
            onClose();
          }}
          onHear={() => onHear(sayStep(task))}
        />
      )}
      <CalendarKey />
    </Sheet>
  );
}

function Legend({ session }: { readonly session: Session }) {
  const marks = dishMarks(session.meal);
  return (
    <ul class="legend" aria-label="The dishes">
      {session.meal.dishes.map((dish) => (
        <li key={dish.id}>
          <DishMark mark={marks.get(dish.id)} />
          {shortName(dish)}
        </li>
      ))}
    </ul>
  );
}
