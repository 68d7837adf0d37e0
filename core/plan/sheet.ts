import type { Instant } from "../units/quantity.ts";
import { earlier, instant, later, plus, seconds } from "../units/quantity.ts";
import { settleMoments } from "./attend.ts";
import type { Taken } from "./attend.ts";
import { cooksAt } from "./hands.ts";
import { handsUntil } from "./hands.ts";
import { brokenLimits } from "./broken.ts";
import type { Candidate } from "./improve.ts";
import { lanesOf } from "./lanes.ts";
import type { Entry, PlanInput, RunSheet, Task } from "./model.ts";
import { ovenMoves } from "./oven-moves.ts";
import type { Problem } from "./problem.ts";
import { momentsOf, spanOf } from "./tasks.ts";

/** The chosen plan, and how much later each act could start, in milliseconds. */
export interface Finished extends Candidate {
  readonly slack: readonly number[];
}

interface Line {
  readonly task: Task;
  readonly start: Instant;
  readonly look: Instant;
  readonly end: Instant;
  readonly oven: string | null;
  readonly slackMs: number;
  readonly isOver: boolean;
}

function finished(input: PlanInput): readonly Line[] {
  return input.tasks.flatMap((task): readonly Line[] => {
    const progress = input.progress.get(task.id);
    if (progress?.state !== "done") return [];
    const start = earlier(progress.startedAt ?? progress.at, progress.at);
    return [{ task, start, look: progress.at, end: progress.at, oven: null, slackMs: 0, isOver: true }];
  });
}

function planned(problem: Problem, made: Finished, input: PlanInput): readonly Line[] {
  return problem.acts.flatMap((act, index): readonly Line[] => {
    const place = made.schedule[index];
    if (place === undefined) return [];
    const progress = input.progress.get(act.task.id);
    const span = spanOf(act.task, progress);
    const start = instant(input.now + place.start);
    const end = instant(start + act.length);
    const slackMs = made.slack[index] ?? 0;
    const oven = place.baking === null ? null : (problem.ovens[place.baking.oven]?.name ?? null);
    return [
      { task: act.task, start, look: earlier(end, plus(start, span.low)), end, oven, slackMs, isOver: false },
    ];
  });
}

function handTime(lines: readonly Line[]): readonly Taken[] {
  return lines
    .filter((line) => !line.isOver)
    .map(({ task, start, end }) => ({ from: start, to: handsUntil(task, start, end) }));
}

function entriesOf(lines: readonly Line[], input: PlanInput): readonly Entry[] {
  const lanes = lanesOf(lines, input);
  const watched = lines.map(({ task, start, end }) => ({ start, end, moments: momentsOf(task, start, end) }));
  const unattended = watched.filter(
    (_, index) => lines[index]?.isOver === false && lines[index].task.step.hands === "off",
  );
  const settled = settleMoments(unattended, handTime(lines), cooksAt(input), input.now);
  return lines.map(({ task, start, look, end, slackMs }, index) => ({
    task: task.id,
    start,
    look,
    end,
    lanes: lanes[index] ?? [],
    moments: (watched[index]?.moments ?? [])
      .map((moment) => settled.get(moment.key) ?? moment)
      .sort((a, b) => a.at - b.at),
    slack: seconds(Math.floor(slackMs / 1000)),
  }));
}

/** The run sheet of a plan: history, what runs and what is to come, with lanes, moments and oven moves. */
export function sheetOf(
  problem: Problem,
  made: Finished,
  input: PlanInput,
  broken: readonly string[],
): RunSheet {
  const position = new Map(input.tasks.map((task, index) => [task, index]));
  const lines = [...finished(input), ...planned(problem, made, input)];
  lines.sort((a, b) => a.start - b.start || (position.get(a.task) ?? 0) - (position.get(b.task) ?? 0));
  const end = lines.reduce<Instant | null>(
    (last, line) => (last === null ? line.end : later(last, line.end)),
    null,
  );
  const readyAt = end ?? input.now;
  const lateMs = input.serveAt === null ? 0 : Math.max(0, readyAt - input.serveAt);
  return {
    entries: entriesOf(lines, input),
    ovenMoves: ovenMoves(problem, made.schedule, input.now),
    readyAt,
    late: seconds(Math.ceil(lateMs / 1000)),
    broken: [...broken, ...brokenLimits(problem, made, input, lateMs)],
  };
}
