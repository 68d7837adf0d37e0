import { useEffect, useState } from "preact/hooks";
import { helperCalls } from "../../core/cook/calls-now.ts";
import type { Session } from "../../core/cook/session.ts";
import type { RunSheet } from "../../core/plan/model.ts";
import { LazyCheck } from "./check/lazy-check.tsx";
import { EarLine } from "./ear/ear-line.tsx";
import { EveningBand } from "./evening/evening-band.tsx";
import { clockTime } from "./galley.ts";
import type { Galley } from "./galley.ts";
import { HeadStrip } from "./head-strip.tsx";
import { LazyDrawer } from "./drawer/lazy-drawer.tsx";
import { NextList } from "./next/next-list.tsx";
import { nextThings } from "./next/next-things.ts";
import { Notices } from "./notices.tsx";
import { pageTitle } from "./page-title.ts";
import type { OnDeed } from "./parts/deed.ts";
import { dishMarks } from "./parts/dish-marks.ts";
import { plateContent } from "./plate/plate-content.ts";
import { Plate } from "./plate/plate.tsx";
import { QuestionSheet } from "./question-sheet.tsx";
import { NewTimer } from "./rail/new-timer.tsx";
import { Rail } from "./rail/rail.tsx";
import { RingNews } from "./ring-news.tsx";

interface CookingPageProps {
  readonly galley: Galley;
  readonly session: Session;
  readonly sheet: RunSheet;
}

/** Where a touch does something of its own. */
const controls = "button, a, input, select, textarea, label, summary, dialog, [role=button], [role=region]";

/** The kitchen while it cooks. A touch beside every control lets the ear listen once. */
export function CookingPage({ galley, session, sheet }: CookingPageProps) {
  const { clock, caller, ear } = galley;
  const [open, setOpen] = useState<"kitchen" | "new timer" | "ear check" | null>(null);
  const close = (): void => setOpen(null);
  const now = clock.now.value;
  const clockOf = (at: typeof now): string => clockTime(at, clock);
  const onDeed: OnDeed = ({ intent, words }) => void caller.touch(intent, words);
  const plates = caller.calls.value.map((call) => plateContent(call, { session, sheet, now }));
  const [first, ...also] = plates;
  const handed = helperCalls(session);
  const marks = dishMarks(session.meal);
  const { question } = caller.dialogue.value;
  const title = pageTitle(session, first?.sentence ?? session.meal.name, now);
  useEffect(() => {
    document.title = title;
  }, [title]);
  const listen = (event: MouseEvent): void => {
    if (event.target instanceof Element && event.target.closest(controls) === null) ear.listenOnce();
  };
  return (
    <div class="cooking" onClick={listen}>
      <HeadStrip
        session={session}
        sheet={sheet}
        now={now}
        clockOf={clockOf}
        onDeed={onDeed}
        onNewTimer={() => setOpen("new timer")}
        onOpenKitchen={() => setOpen("kitchen")}
      />
      <Notices galley={galley} />
      {first !== undefined && (
        <Plate
          content={first}
          also={also}
          handed={handed.map((call) => plateContent(call, { session, sheet, now }))}
          marks={marks}
          onDeed={onDeed}
        />
      )}
      <Rail session={session} now={now} clockOf={clockOf} onDeed={onDeed} />
      <NextList things={nextThings(session, sheet, now, [...caller.calls.value, ...handed])} marks={marks} />
      <EveningBand
        session={session}
        sheet={sheet}
        now={now}
        clockOf={clockOf}
        utcOffsetMinutes={clock.utcOffsetMinutes(clock.now.value)}
        onDeed={onDeed}
        onHear={caller.tell}
      />
      <EarLine galley={galley} onCheck={() => setOpen("ear check")} />
      <RingNews session={session} now={now} />
      {question !== null && question.kind !== "more" && (
        <QuestionSheet key={question.prompt} question={question} onDeed={onDeed} onSay={caller.hearTyped} />
      )}
      {open === "new timer" && <NewTimer onDeed={onDeed} onClose={close} />}
      {open === "kitchen" && (
        <LazyDrawer
          galley={galley}
          session={session}
          sheet={sheet}
          onDeed={onDeed}
          onCheckEar={() => setOpen("ear check")}
          onClose={close}
        />
      )}
      {open === "ear check" && <LazyCheck galley={galley} session={session} onClose={close} />}
    </div>
  );
}
