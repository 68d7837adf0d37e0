import type { Session } from "../../../core/cook/session.ts";
import type { Entry, RunSheet, TaskId } from "../../../core/plan/model.ts";
import { dishMarks } from "../parts/dish-marks.ts";
import type { DishMark } from "../parts/dish-marks.ts";
import { earlier, instant, later, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";

/** One step on one lane. */
export interface LaneBar {
  readonly task: TaskId;
  readonly title: string;
  readonly mark: DishMark | undefined;
  readonly from: Instant;
  readonly to: Instant;
  readonly state: "done" | "running" | "focus" | "ahead";
  /** Attention moments: a stir, a flip, the lid. */
  readonly ticks: readonly Instant[];
  /** Which of the rows of its lane, from 0: two trays share an oven. */
  readonly row: number;
}

/** What one pair of hands, oven, burner or machine does over the evening. */
export interface Lane {
  readonly name: string;
  readonly label: string;
  readonly bars: readonly LaneBar[];
  /** At least 1. */
  readonly rows: number;
}

/** The whole evening as a picture over time. */
export interface Evening {
  readonly from: Instant;
  readonly to: Instant;
  readonly now: Instant;
  readonly lanes: readonly Lane[];
  readonly readyAt: Instant;
  /** When the cook asked to eat; null: as soon as it is ready. */
  readonly serveAt: Instant | null;
}

/** Hands first, then ovens, burners, machines, and what just stands. */
function laneOrder(name: string, session: Session): number {
  if (name === "cook") return 0;
  if (session.meal.kitchen.ovens.some((oven) => oven.name === name)) return 1;
  if (name.startsWith("burner")) return 2 + Number(name.slice(7)) / 100;
  if (name === "fridge") return 4;
  return name === "counter" ? 5 : 3;
}

/** Lays the run sheet out on its lanes. */
export function eveningLayout(session: Session, sheet: RunSheet, now: Instant): Evening {
  const names = new Set<string>(["cook", ...session.meal.kitchen.ovens.map((oven) => oven.name)]);
  for (const entry of sheet.entries) for (const lane of entry.lanes) names.add(lane);
  const begun = sheet.entries.reduce((first, entry) => earlier(first, entry.start), session.begunAt);
  const end = sheet.entries.reduce((last, entry) => later(last, entry.end), later(sheet.readyAt, now));
  return {
    from: begun,
    to: plus(later(end, session.serveAt ?? end), minutes(3)),
    now,
    readyAt: sheet.readyAt,
    serveAt: session.serveAt,
    lanes: [...names]
      .toSorted((a, b) => laneOrder(a, session) - laneOrder(b, session) || a.localeCompare(b))
      .map((name) => lane(name, session, sheet, now)),
  };
}

function lane(name: string, session: Session, sheet: RunSheet, now: Instant): Lane {
  const bars: LaneBar[] = [];
  const freeAt: Instant[] = [];
  for (const entry of sheet.entries.filter((one) => one.lanes.includes(name))) {
    const free = freeAt.findIndex((at) => at <= entry.start);
    const row = free < 0 ? freeAt.length : free;
    const bar = laneBar(entry, row, session, now);
    freeAt[row] = bar.to;
    bars.push(bar);
  }
  return { name, label: name === "cook" ? "hands" : name, bars, rows: Math.max(1, freeAt.length) };
}

function laneBar(entry: Entry, row: number, session: Session, now: Instant): LaneBar {
  const task = session.tasks.find((one) => one.id === entry.task);
  const progress = session.progress.get(entry.task)?.state;
  const isOver = progress === "done" || progress === "skipped";
  const state = isOver
    ? "done"
    : session.focus?.task === entry.task
      ? "focus"
      : progress === "running"
        ? "running"
        : "ahead";
  return {
    task: entry.task,
    title: task?.step.title ?? entry.task,
    mark: task === undefined ? undefined : dishMarks(session.meal).get(task.dish.id),
    from: entry.start,
    to: state === "running" ? later(entry.end, now) : entry.end,
    state,
    ticks: isOver
      ? []
      : entry.moments.filter((moment) => !session.attended.has(moment.key)).map((moment) => moment.at),
    row,
  };
}

/** Round moments of the clock between two others, not nearer to each other than `apart` minutes. */
export function roundTimes(
  from: Instant,
  to: Instant,
  apart: number,
  utcOffsetMinutes: number,
): readonly Instant[] {
  const step = [5, 10, 15, 30, 60, 120, 240, 480].find((one) => one >= apart) ?? 720;
  const [stepMs, offsetMs] = [step * 60_000, utcOffsetMinutes * 60_000];
  const first = Math.ceil((from + offsetMs) / stepMs) * stepMs - offsetMs;
  const count = Math.max(0, Math.floor((to - first) / stepMs) + 1);
  return Array.from({ length: count }, (_, index) => instant(first + index * stepMs));
}
