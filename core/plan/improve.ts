import type { Rule, Schedule } from "./generate.ts";
import { generate } from "./generate.ts";
import type { Verdict } from "./judge.ts";
import { endOf, isBetter, judge, readyOf } from "./judge.ts";
import { ranked } from "./orders.ts";
import type { Problem } from "./problem.ts";
import { mirrored } from "./problem.ts";

/** A schedule with what is to be said against it. */
export interface Candidate {
  readonly rule: Rule;
  readonly schedule: Schedule;
  readonly verdict: Verdict;
  /** The latest start of each act in the plan that still makes dinner, milliseconds from now. */
  readonly latest: readonly number[];
  /** The serving moment that it was made for. */
  readonly serving: number;
}

/** What the cook wants: when to eat (milliseconds from now; null: soon), and what to do first. */
export interface Goal {
  readonly serveAt: number | null;
  /** Acts with what they wait for, the most urgent first. */
  readonly first: readonly number[];
}

/** Slack before serving, as a part of the time that the work takes; measured to be enough nearly always. */
const SLACK = 0.1;
/** What does not say how long it keeps is made at most this much earlier than it has to be. */
const KEEPS_MS = 2 * 3_600_000;
/** Rounds in which a dinner that comes out later than planned for is planned for that later moment. */
const ROUNDS = 3;

/** How close to serving an act has to end, in milliseconds; Infinity: it keeps. */
function keeps(problem: Problem, index: number): number {
  const step = problem.acts[index]?.task.step;
  const close = step?.endsBeforeServing ?? Infinity;
  const isLast = (problem.after[index] ?? []).every((arc) => problem.acts[arc.to]?.task.step === step);
  return Math.min(close, isLast ? (step?.hold ?? Infinity) : Infinity) * 1000;
}

/** Those that go first get ranks before all others. */
function withFirst(rank: readonly number[], first: readonly number[]): readonly number[] {
  return rank.map((place, index) =>
    first.includes(index) ? first.indexOf(index) - first.length - 1 : place,
  );
}

/** Everything as late as it goes, in the opposite order of `schedule`; what keeps least goes last. */
function asLateAsPossible(
  problem: Problem,
  schedule: Schedule,
  rule: Rule,
  serving: number,
  slack: number,
): Schedule {
  const due = problem.acts.map((_, index) => serving - Math.min(slack, keeps(problem, index)));
  // A minute of freshness lost weighs like a minute of order: what wilts is put nearest to the table.
  const value = problem.acts.map(
    (_, index) => Math.min(keeps(problem, index), KEEPS_MS) - endOf(problem, schedule, index),
  );
  const turned = generate(mirrored(problem, due), { rank: ranked(value), patience: rule.patience });
  return turned.map(({ start, baking }, index) => ({
    start: -start - (problem.acts[index]?.length ?? 0),
    baking,
  }));
}

/** From when on an act is wanted: hot and wilting things late, what is bound to them too, the rest early. */
function releases(problem: Problem, latest: readonly number[], serving: number, first: readonly number[]) {
  return problem.acts.map((act, index) => {
    const { step } = act.task;
    const last = latest[index] ?? 0;
    if (first.includes(index)) return act.release;
    const isBound = [...(problem.before[index] ?? []), ...(problem.after[index] ?? [])].some(
      (arc) => arc.atMost !== null,
    );
    if (step.hold !== null || step.endsBeforeServing !== null || isBound) return Math.max(act.release, last);
    const earliest = step.ahead === null ? last - KEEPS_MS : serving - step.ahead * 1000 - act.length;
    return Math.max(act.release, Math.min(last, earliest));
  });
}

/**
 * One plan by one rule: as soon as possible to see how long it takes; from the serving moment (less some
 * slack) backwards as late as possible; then forward again in that order, hands-on preparation early, hot
 * things no earlier than they were.
 */
export function candidate(problem: Problem, rule: Rule, goal: Goal): Candidate {
  const ordered = { ...rule, rank: withFirst(rule.rank, goal.first) };
  const soonest = generate(problem, ordered);
  const length = readyOf(problem, soonest);
  let serving = Math.max(goal.serveAt ?? 0, length);
  let best: Candidate | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const slack = Math.min(SLACK * length, serving - length);
    const late = asLateAsPossible(problem, soonest, rule, serving, slack);
    const latest = late.map((place) => place.start);
    const release = releases(problem, latest, serving, goal.first);
    const acts = problem.acts.map((act, index) => ({ ...act, release: release[index] ?? act.release }));
    const rank = withFirst(ranked(latest), goal.first);
    const schedule = generate({ ...problem, acts }, { rank, patience: rule.patience });
    const made = { rule, schedule, verdict: judge(problem, schedule, serving), latest, serving };
    if (best === null || isBetter(made.verdict, best.verdict, goal.serveAt ?? 0)) best = made;
    if (made.verdict.ready <= serving) break;
    serving = made.verdict.ready;
  }
  if (best === null) throw new Error("no round was planned");
  return best;
}
