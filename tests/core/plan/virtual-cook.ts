import { plan } from "../../../core/plan/plan.ts";
import type { OvenState, PlanInput, Progress, RunSheet, TaskId } from "../../../core/plan/model.ts";
import type { Worker } from "../../../core/plan/worker.ts";
import { instant } from "../../../core/units/quantity.ts";
import type { Instant, Seconds } from "../../../core/units/quantity.ts";

/** What a virtual evening came to. */
export interface Evening {
  /** Hands-on tasks in the order in which they were begun. */
  readonly order: readonly TaskId[];
  /** The sheet of every minute, with the input it was made from. */
  readonly sheets: readonly { readonly input: PlanInput; readonly sheet: RunSheet }[];
  readonly endedAt: Instant;
  /** Whether every task came to its end. */
  readonly isFinished: boolean;
}

const MINUTE = 60_000;

const isSame = (one: ReadonlyMap<TaskId, Progress>, other: ReadonlyMap<TaskId, Progress>): boolean =>
  one.size === other.size && [...one].every(([id, state]) => other.get(id) === state);

/**
 * Cooks a meal exactly by the sheet: a new sheet every minute and after everything that happens; turns the
 * oven when told; starts what is due; ends each task after exactly its planned length times `pace(task)`.
 */
export function cook(begin: PlanInput, pace: (task: TaskId) => number = () => 1): Evening {
  const progress = new Map<TaskId, Progress>(begin.progress);
  let ovens: readonly OvenState[] = begin.ovens;
  const sheets: Evening["sheets"][number][] = [];
  const order: TaskId[] = [];
  const handed = new Map(begin.handed);
  let now: number = begin.now;
  let told = new Map(progress);
  let since = begin.now;
  const endOf = (id: TaskId, started: Instant, span: { readonly low: Seconds; readonly high: Seconds }) =>
    started + Math.round((span.low + span.high) / 2) * 1000 * pace(id);
  const isAtWork = (worker: Worker): boolean =>
    begin.tasks.some(
      ({ id, step }) =>
        step.hands === "on" && progress.get(id)?.state === "running" && (handed.get(id) ?? "cook") === worker,
    );
  for (let turns = 0; turns < 2_000; turns += 1) {
    for (const [id, one] of progress) {
      if (one.state === "running" && endOf(id, one.startedAt, one.span) <= now) {
        progress.set(id, { state: "done", startedAt: one.startedAt, at: instant(now) });
      }
    }
    if (begin.tasks.every((task) => progress.get(task.id)?.state === "done")) break;
    if (!isSame(told, progress)) [told, since] = [new Map(progress), instant(now)];
    const input: PlanInput = { ...begin, progress: told, ovens, handed, now: instant(now), since };
    const sheet = plan(input);
    sheets.push({ input, sheet });
    for (const move of sheet.ovenMoves) {
      if (move.at > now) continue;
      const others = ovens.filter((oven) => oven.oven !== move.oven);
      since = instant(now);
      ovens = [...others, { oven: move.oven, heat: move.heat, setAt: instant(now) }];
    }
    let next = (Math.floor(now / MINUTE) + 1) * MINUTE;
    for (const entry of sheet.entries) {
      const task = begin.tasks.find((one) => one.id === entry.task);
      if (task === undefined) continue;
      const state = progress.get(entry.task)?.state ?? "waiting";
      if (state === "waiting" && entry.start > now) next = Math.min(next, entry.start);
      if (state !== "waiting" || entry.start > now) continue;
      // What takes longer than planned keeps its followers waiting, whatever the sheet says.
      if (task.after.some((link) => progress.get(link.task)?.state === "running")) continue;
      // So do the cooks, each of whom is at one thing at a time.
      const helper = begin.helpers.find((one) => entry.lanes.includes(one.helper))?.helper ?? null;
      if (task.step.hands === "on" && isAtWork(helper ?? "cook")) continue;
      progress.set(entry.task, { state: "running", startedAt: instant(now), span: task.step.time });
      if (task.step.hands === "on") order.push(entry.task);
      if (helper !== null) handed.set(entry.task, helper);
    }
    for (const [id, one] of progress) {
      if (one.state === "running") next = Math.min(next, endOf(id, one.startedAt, one.span));
    }
    now = Math.max(next, now + 1);
  }
  const isFinished = begin.tasks.every((task) => progress.get(task.id)?.state === "done");
  return { order, sheets, endedAt: instant(now), isFinished };
}
