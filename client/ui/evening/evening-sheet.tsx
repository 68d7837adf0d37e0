import { useEffect, useRef, useState } from "preact/hooks";
import { sayStep, shortName } from "../../../core/cook/say-call.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { TaskId } from "../../../core/plan/model.ts";
import { capital } from "../../../core/units/capital.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import { dishMarks } from "../parts/dish-marks.ts";
import { Sheet } from "../parts/sheet.tsx";
import { CalendarKey } from "./calendar-key.tsx";
import type { EveningProps } from "./evening-props.ts";
import { sayEvening } from "./evening-words.ts";
import { PickedStep } from "./picked-step.tsx";
import { PictureKey } from "./picture-key.tsx";
import { ScrolledPicture } from "./scrolled-picture.tsx";
import { drawnEvening } from "./drawn-evening.ts";

interface EveningSheetProps extends EveningProps {
  readonly chain: readonly TaskId[];
  readonly onClose: () => void;
}

/** The evening laid out large: every step can be picked, heard, and taken up now. */
export function EveningSheet(props: EveningSheetProps) {
  const { session, sheet, chain, now, clockOf, utcOffsetMinutes, onDeed, onHear, onClose } = props;
  const [picked, setPicked] = useState<TaskId | null>(session.focus?.task ?? null);
  const about = useRef<HTMLDivElement>(null);
  const isTouched = useRef(false);
  const { evening, heats } = drawnEvening(props, chain, "whole");
  useEffect(() => {
    // Only after a touch: laid open, the sheet begins with the picture.
    if (isTouched.current) about.current?.scrollIntoView({ block: "nearest" });
  }, [picked]);
  const task = session.tasks.find((one) => one.id === picked);
  return (
    <Sheet
      title="The whole evening"
      kind="wide"
      onClose={onClose}
      keys={
        <button type="button" class="key" onClick={() => window.print()}>
          Print
        </button>
      }
    >
      <Legend session={session} />
      <div class="unseen">
        {sayEvening(evening, heats, clockOf).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <ScrolledPicture
        evening={evening}
        heats={heats}
        clockOf={clockOf}
        utcOffsetMinutes={utcOffsetMinutes}
        picked={picked}
        onPick={(one) => {
          isTouched.current = true;
          setPicked(one);
        }}
      />
      <PictureKey />
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
        <div ref={about}>
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
        </div>
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
