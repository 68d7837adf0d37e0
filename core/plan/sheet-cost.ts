import type { PlanInput, RunSheet, Task, TaskId } from "./model.ts";
import { takersOf } from "./tasks.ts";

/** What there is to say against a run sheet, in whole minutes; the weightiest first. Less is better. */
export interface SheetCost {
  /** By how much hard limits are missed, in all: maximum lags, and what must end close to serving. */
  readonly missed: number;
  /** How much later than asked; where no time was asked for, how long until all is ready. */
  readonly late: number;
  /** How much longer hot food waits than it should. */
  readonly waits: number;
  /** How long the cook's hands are wanted, a minute for each start and each look. */
  readonly hands: number;
}

const MINUTE_MS = 60_000;
/** Less than a minute does not decide how dinner is made; but a hard limit is missed however little it is missed. */
const rounded = (ms: number): number => Math.round(ms / MINUTE_MS);

type Times = ReadonlyMap<TaskId, { readonly start: number; readonly end: number; readonly looks: number }>;

function timesOf(sheet: RunSheet): Times {
  return new Map(
    sheet.entries.map(({ task, start, end, moments }) => [task, { start, end, looks: moments.length }]),
  );
}

const isOpen = ({ progress }: PlanInput, task: Task): boolean =>
  (progress.get(task.id)?.state ?? "waiting") === "waiting";

function missedBy(task: Task, times: Times, table: number): number {
  const mine = times.get(task.id);
  if (mine === undefined) return 0;
  const lags = task.after.reduce((sum, { task: before, atMost }) => {
    const end = times.get(before)?.end;
    return atMost === null || end === undefined ? sum : sum + Math.max(0, mine.start - end - atMost * 1000);
  }, 0);
  const close = task.step.endsBeforeServing;
  return close === null ? lags : lags + Math.max(0, table - mine.end - close * 1000);
}

function waitOf(task: Task, tasks: readonly Task[], times: Times, table: number): number {
  const { hold } = task.step;
  const end = times.get(task.id)?.end;
  if (hold === null || end === undefined) return 0;
  const taken = takersOf(task, tasks).flatMap(({ id }) => times.get(id)?.start ?? []);
  return Math.max(0, (taken.length === 0 ? table : Math.max(...taken)) - end - hold * 1000);
}

function handsOf(task: Task, times: Times): number {
  const mine = times.get(task.id);
  if (mine === undefined) return 0;
  return task.step.hands === "on" ? mine.end - mine.start : MINUTE_MS * (1 + mine.looks);
}

/** Judges a sheet by what it says itself, whoever made it. */
export function sheetCost(input: PlanInput, sheet: RunSheet): SheetCost {
  const times = timesOf(sheet);
  const { tasks, serveAt, now } = input;
  const table = Math.max(sheet.readyAt, serveAt ?? sheet.readyAt);
  const sum = (of: readonly Task[], part: (task: Task) => number): number =>
    of.reduce((all, task) => all + part(task), 0);
  const open = tasks.filter((task) => isOpen(input, task));
  return {
    missed: Math.ceil(sum(open, (task) => missedBy(task, times, table)) / MINUTE_MS),
    late: rounded(serveAt === null ? sheet.readyAt - now : sheet.late * 1000),
    waits: rounded(sum(tasks, (task) => waitOf(task, tasks, times, table))),
    hands: rounded(sum(open, (task) => handsOf(task, times))),
  };
}

const goals = ["missed", "late", "waits", "hands"] as const;

/** The weightiest goal in which two sheets differ; null where they are alike. */
export const decidingGoal = (a: SheetCost, b: SheetCost): keyof SheetCost | null =>
  goals.find((goal) => a[goal] !== b[goal]) ?? null;

/** Below 0 where `a` is the better. */
export function compareCosts(a: SheetCost, b: SheetCost): number {
  const goal = decidingGoal(a, b);
  return goal === null ? 0 : a[goal] - b[goal];
}
