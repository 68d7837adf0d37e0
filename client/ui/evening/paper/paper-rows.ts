import { shortName } from "../../../../core/cook/say-call.ts";
import type { Session } from "../../../../core/cook/session.ts";
import type { Entry, RunSheet, Task, TaskId } from "../../../../core/plan/model.ts";
import { usesOf } from "../../../../core/plan/uses.ts";
import { formatDuration } from "../../../../core/units/duration.ts";
import type { Instant } from "../../../../core/units/quantity.ts";
import { formatHeat } from "../../../../core/units/temperature.ts";
import { dishMarks } from "../../parts/dish-marks.ts";

/** One line of the printed list: a step, a turn of an oven, or the table. */
export interface PaperRow {
  readonly key: string;
  readonly at: Instant;
  /** The letter of its dish; empty where it is no dish's. */
  readonly letter: string;
  readonly dish: string;
  readonly title: string;
  /** "6-8 min", "griddle; batch 2 of 3". */
  readonly length: string;
  /** "burner 2", "oven 390°F"; empty where it takes no more than hands. */
  readonly place: string;
  /** The moments at which it wants the cook: "stir", with their times. */
  readonly moments: readonly { readonly what: string; readonly at: readonly Instant[] }[];
  readonly isAwaited: boolean;
  readonly isDone: boolean;
}

type Known = { readonly session: Session; readonly sheet: RunSheet };

/** The whole evening as a list in order of time; an oven is turned before what begins in the same minute. */
export function paperRows({ session, sheet }: Known, chain: readonly TaskId[]): readonly PaperRow[] {
  const setTo = new Map(session.ovens.map(({ oven, heat }) => [oven, heat]));
  const steps = sheet.entries.flatMap((entry): readonly PaperRow[] => {
    const task = session.tasks.find(({ id }) => id === entry.task);
    if (task === undefined) return [];
    const uses = usesOf(entry, sheet, setTo, formatHeat).filter((one) => one !== "cook");
    return [
      {
        key: entry.task,
        at: entry.start,
        letter: dishMarks(session.meal).get(task.dish.id)?.letter ?? "",
        dish: shortName(task.dish),
        title: titleOf(task),
        length: formatDuration(task.step.time),
        place: uses.join(", ") || (task.step.hands === "off" ? "counter" : ""),
        moments: momentsOf(entry, session),
        isAwaited: chain.includes(entry.task),
        isDone: session.progress.get(entry.task)?.state === "done",
      },
    ];
  });
  return [...turns({ session, sheet }), ...steps].toSorted((a, b) => a.at - b.at);
}

function titleOf({ step, batch }: Task): string {
  return batch === null ? step.title : `${step.title} (${batch.number} of ${batch.count})`;
}

/** What wants the cook while it runs, each sort once with all of its times. */
function momentsOf(entry: Entry, session: Session): PaperRow["moments"] {
  const times = new Map<string, Instant[]>();
  for (const moment of entry.moments.filter(({ key }) => !session.attended.has(key))) {
    const what = moment.do.replace(/[.;].*$/, "");
    times.set(what, [...(times.get(what) ?? []), moment.at]);
  }
  return [...times].map(([what, at]) => ({ what, at }));
}

function turns({ session, sheet }: Known): readonly PaperRow[] {
  const none = { letter: "", dish: "", length: "", moments: [], isAwaited: false } as const;
  const done = session.ovenTurns.map(({ oven, heat, at }) => {
    const title = heat === null ? `Turn the ${oven} off` : `Turn the ${oven} to ${formatHeat(heat)}`;
    return { ...none, key: `turned ${oven} ${at}`, at, title, place: oven, isDone: true };
  });
  const ahead = sheet.ovenMoves.map(({ oven, heat, at }) => {
    const title = `Turn the ${oven} to ${formatHeat(heat)}`;
    return { ...none, key: `turn ${oven} ${at}`, at, title, place: oven, isDone: false };
  });
  return [...done, ...ahead];
}
