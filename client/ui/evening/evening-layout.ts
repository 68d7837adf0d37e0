import { holderOf } from "../../../core/cook/hands.ts";
import { shortName } from "../../../core/cook/say-call.ts";
import type { Session } from "../../../core/cook/session.ts";
import { helpers } from "../../../core/plan/worker.ts";
import type { Entry, RunSheet, TaskId } from "../../../core/plan/model.ts";
import { dishMarks } from "../parts/dish-marks.ts";
import type { DishMark } from "../parts/dish-marks.ts";
import { earlier, instant, later, minus, minutes, plus, seconds } from "../../../core/units/quantity.ts";
import type { Instant, Seconds } from "../../../core/units/quantity.ts";

/** One step on one lane. */
export interface LaneBar {
  readonly task: TaskId;
  /** The dish as it is called for short. */
  readonly dish: string;
  readonly title: string;
  readonly mark: DishMark | undefined;
  readonly from: Instant;
  readonly to: Instant;
  readonly state: "done" | "running" | "focus" | "ahead";
  /** Attention moments: a stir, a flip, the lid. */
  readonly ticks: readonly Instant[];
  /** Which of the rows of its lane, from 0: two trays share an oven. */
  readonly row: number;
  /** How much later it may start without making dinner later; 0 for what runs or is over. */
  readonly slack: Seconds;
  /** At which height its tail is drawn, from 0 to 2, so that those that run side by side can be told apart. */
  readonly level: number;
  /** Until when dinner waits for it; null where it does not. A pot that is on is not waited for, only its putting on. */
  readonly awaitedTo: Instant | null;
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
  /** Those that make dinner as late as it is, in order of time. */
  readonly chain: readonly TaskId[];
  readonly readyAt: Instant;
  /** When the cook asked to eat; null: as soon as it is ready. */
  readonly serveAt: Instant | null;
}

const isHelper = (name: string): boolean => helpers.some((helper) => helper === name);

/** Narrow enough to stand beside the picture. */
const labels: ReadonlyMap<string, string> = new Map([
  ["cook", "hands"],
  ["second helper", "helper 2"],
]);

/** Hands first, then ovens, burners, machines, and what just stands. */
function laneOrder(name: string, session: Session): number {
  if (name === "cook") return 0;
  if (isHelper(name)) return 0.5;
  if (session.meal.kitchen.ovens.some((oven) => oven.name === name)) return 1;
  if (name.startsWith("burner")) return 2 + Number(name.slice(7)) / 100;
  if (name === "fridge") return 4;
  return name === "counter" ? 5 : 3;
}

/** What the picture is to show: the whole evening, or a little of what was and all that comes. */
export type Extent = "whole" | "ahead";

/** So much of what was is still told beside what comes. */
const looksBack = minutes(15);

/** Lays the run sheet out on its lanes. @param chain those that dinner waits for, in order of time */
export function eveningLayout(
  session: Session,
  sheet: RunSheet,
  now: Instant,
  chain: readonly TaskId[],
  extent: Extent,
): Evening {
  const begun = sheet.entries.reduce((first, entry) => earlier(first, entry.start), session.begunAt);
  const from = extent === "whole" ? begun : later(begun, minus(now, looksBack));
  const end = sheet.entries.reduce((last, entry) => later(last, entry.end), later(sheet.readyAt, now));
  const shown = sheet.entries.filter((entry) => extent === "whole" || entry.end > from);
  const there = session.helpers.map(({ helper }) => helper);
  const names = new Set<string>(["cook", ...there, ...session.meal.kitchen.ovens.map((oven) => oven.name)]);
  for (const entry of shown) for (const lane of entry.lanes) names.add(lane);
  const awaited = awaitedUntil(sheet, chain);
  const bars = new Map(shown.map((entry) => [entry, laneBar(entry, session, now, from, awaited)]));
  return {
    from,
    to: plus(later(end, session.serveAt ?? end), minutes(3)),
    now,
    chain,
    readyAt: sheet.readyAt,
    serveAt: session.serveAt,
    lanes: [...names]
      .toSorted((a, b) => laneOrder(a, session) - laneOrder(b, session) || a.localeCompare(b))
      .map((name) => lane(name, bars)),
  };
}

/** Dinner waits for each of the chain to its end, or until the next one of the chain begins. */
function awaitedUntil({ entries }: RunSheet, chain: readonly TaskId[]): ReadonlyMap<TaskId, Instant> {
  const links = chain.flatMap((task) => entries.filter((entry) => entry.task === task));
  return new Map(
    links.map(({ task, end }, index) => [task, earlier(end, links[index + 1]?.start ?? end)] as const),
  );
}

function lane(name: string, all: ReadonlyMap<Entry, LaneBar>): Lane {
  const bars: LaneBar[] = [];
  const freeAt: Instant[] = [];
  for (const [, bar] of [...all].filter(([entry]) => entry.lanes.includes(name))) {
    const free = freeAt.findIndex((at) => at <= bar.from);
    const row = free < 0 ? freeAt.length : free;
    freeAt[row] = bar.to;
    bars.push({ ...bar, row });
  }
  return {
    name,
    label: labels.get(name) ?? name,
    bars: freeAt.flatMap((_, row) => withLevels(bars.filter((bar) => bar.row === row))),
    rows: Math.max(1, freeAt.length),
  };
}

/** Gives the tails of one row their heights; where there are too many, two share one. */
function withLevels(bars: readonly LaneBar[]): readonly LaneBar[] {
  const freeAt: [number, number, number] = [0, 0, 0];
  return bars.map((bar) => {
    if (bar.awaitedTo !== null || bar.slack === 0) return bar;
    const free = freeAt.findIndex((at) => at <= bar.to);
    const level = free < 0 ? freeAt.indexOf(Math.min(...freeAt)) : free;
    freeAt[level] = plus(bar.to, bar.slack);
    return { ...bar, level };
  });
}

function laneBar(
  entry: Entry,
  session: Session,
  now: Instant,
  from: Instant,
  awaited: ReadonlyMap<TaskId, Instant>,
): LaneBar {
  const task = session.tasks.find((one) => one.id === entry.task);
  const progress = session.progress.get(entry.task)?.state;
  const isOver = progress === "done" || progress === "skipped";
  const state = isOver
    ? "done"
    : holderOf(session, entry.task) !== null
      ? "focus"
      : progress === "running"
        ? "running"
        : "ahead";
  return {
    task: entry.task,
    dish: task === undefined ? "" : shortName(task.dish),
    title: task?.step.title ?? entry.task,
    mark: task === undefined ? undefined : dishMarks(session.meal).get(task.dish.id),
    from: entry.start,
    to: state === "running" ? later(entry.end, now) : entry.end,
    state,
    ticks: isOver
      ? []
      : entry.moments
          .filter((moment) => moment.at >= from && !session.attended.has(moment.key))
          .map((moment) => moment.at),
    row: 0,
    level: 0,
    slack: progress === "waiting" ? entry.slack : seconds(0),
    awaitedTo: isOver ? null : (awaited.get(entry.task) ?? null),
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
