import type { Act, Arc } from "./act.ts";
import { cooksAt } from "./hands.ts";
import { leavers } from "./lull.ts";
import { poolUse, poolsOf } from "./pools.ts";
import type { Pools } from "./pools.ts";
import type { PlanInput, Progress, Task, TaskId } from "./model.ts";
import { momentsOf, plannedLength, spanOf } from "./tasks.ts";
import { bakingsOf, heatOf, ovensOf } from "./oven.ts";
import type { HeatUse, OvenFacts } from "./oven.ts";
import { instant } from "../units/quantity.ts";

/** What is to be planned. */
export interface Problem {
  readonly acts: readonly Act[];
  /** What comes before each act, and after it; indices as in `acts`. */
  readonly before: readonly (readonly Arc[])[];
  readonly after: readonly (readonly Arc[])[];
  /** For each act those that take up its result; empty: it goes to the table. */
  readonly takers: readonly (readonly number[])[];
  /** How many pairs of hands there are. */
  readonly cooks: number;
  /** How many there are of each. */
  readonly pools: readonly number[];
  readonly ovens: readonly OvenFacts[];
  /** How long before the table the cook wants the hands free; 0: not at all. */
  readonly lull: number;
  /** Which acts could well be over by then. */
  readonly mayLeave: readonly boolean[];
}

const MINUTE_MS = 60_000;

function runningOf(progress: Progress, now: number, lengthMs: number): Act["running"] {
  if (progress.state !== "running") return null;
  const start = progress.startedAt - now;
  return { start, end: Math.max(start + lengthMs, 0) };
}

function bounds(task: Task, progress: ReadonlyMap<TaskId, Progress>, now: number) {
  let release = 0;
  let latest: number | null = null;
  for (const link of task.after) {
    const before = progress.get(link.task);
    // What was skipped asks for no rest: the cook knows why it may go on without it.
    if (before?.state !== "done") continue;
    const end = before.at - now;
    release = Math.max(release, end + link.atLeast * 1000);
    if (link.atMost !== null) latest = Math.min(latest ?? Infinity, end + link.atMost * 1000);
  }
  return { release, latest };
}

function actOf(task: Task, input: PlanInput, pools: Pools): Act {
  const progress = input.progress.get(task.id) ?? { state: "waiting" };
  const planned = plannedLength(spanOf(task, progress)) * 1000;
  const running = runningOf(progress, input.now, planned);
  const length = running === null ? planned : running.end - running.start;
  return {
    task,
    length,
    hands: { from: 0, to: task.step.hands === "on" ? length : Math.min(length, MINUTE_MS) },
    pools: poolUse(task, pools),
    oven: heatOf(task.step),
    bakings: [],
    ...bounds(task, input.progress, input.now),
    running,
    moments: momentsOf(task, instant(0), instant(length)).map((moment) => moment.at),
  };
}

function isOver(input: PlanInput, task: Task): boolean {
  const state = input.progress.get(task.id)?.state;
  return state === "done" || state === "skipped";
}

function arcsOf(open: readonly Task[]): readonly Arc[] {
  const index = new Map(open.map((task, at) => [task.id, at]));
  return open.flatMap((task, to) =>
    task.after.flatMap((link): readonly Arc[] => {
      const from = index.get(link.task);
      if (from === undefined || from === to) return [];
      const atMost = link.atMost === null ? null : link.atMost * 1000;
      return [{ from, to, atLeast: link.atLeast * 1000, atMost }];
    }),
  );
}

/** What may be chosen; what runs stays where it is, in the oven whose heat suits it, at the heat that is set. */
function bakingsFor(act: Act, use: HeatUse, uses: readonly HeatUse[], ovens: readonly OvenFacts[]) {
  if (act.running === null || ovens.length === 0) return bakingsOf(use, uses, ovens);
  const suits = ovens.findIndex(({ set }) => set !== null && set >= use.low && set <= use.high);
  const oven = Math.max(0, suits);
  return [{ oven, heat: ovens[oven]?.set ?? use.low }];
}

/** What is still to be planned, with what runs and what is over taken into account. */
export function problemOf(input: PlanInput): Problem {
  const open = input.tasks.filter((task) => !isOver(input, task));
  const pools = poolsOf(input.meal);
  const cold = open.map((task) => actOf(task, input, pools));
  const baking = cold.flatMap((act) => (act.running === null ? [] : (act.oven ?? [])));
  const ovens = ovensOf(input, baking);
  const uses = cold.flatMap((act) => act.oven ?? []);
  const acts = cold.map((act) =>
    act.oven === null ? act : { ...act, bakings: bakingsFor(act, act.oven, uses, ovens) },
  );
  const counts = [...pools.values()].map((pool) => pool.count);
  const lull = (input.lull ?? 0) * 1000;
  return withArcs({ acts, cooks: cooksAt(input), pools: counts, ovens, lull }, arcsOf(open));
}

/** The same problem with these arcs in place of its own. */
export function withArcs(
  problem: Omit<Problem, "before" | "after" | "takers" | "mayLeave">,
  arcs: readonly Arc[],
): Problem {
  const before: Arc[][] = problem.acts.map(() => []);
  const after: Arc[][] = problem.acts.map(() => []);
  for (const arc of arcs) {
    before[arc.to]?.push(arc);
    after[arc.from]?.push(arc);
  }
  const takers = takersOf(problem.acts, after);
  const mayLeave = leavers({ acts: problem.acts, before, after, takers }, problem.lull);
  return { ...problem, before, after, takers, mayLeave };
}

/**
 * Who takes up what an act makes. A next batch takes up the pan, not the food, so the early batches wait for
 * those that take up the last.
 */
function takersOf(acts: readonly Act[], after: readonly (readonly Arc[])[]): readonly (readonly number[])[] {
  const own = acts.map((act, index) =>
    (after[index] ?? []).flatMap((arc) => (acts[arc.to]?.task.step === act.task.step ? [] : [arc.to])),
  );
  return acts.map((act, index) => {
    const mine = own[index] ?? [];
    if (mine.length > 0 || act.task.batch === null) return mine;
    return acts.flatMap((other, at) => (other.task.step === act.task.step ? (own[at] ?? []) : []));
  });
}
