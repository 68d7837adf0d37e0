import type { Rule, Schedule } from "./generate.ts";
import { generate } from "./generate.ts";
import type { Verdict } from "./judge.ts";
import { endOf, isBetter, judge, readyOf } from "./judge.ts";
import { ranked } from "./orders.ts";
import type { Problem } from "./problem.ts";
import { KEEPS_MS, delayed, keeps, wantedFrom } from "./releases.ts";

/** A problem, and the same with time running backwards. */
export interface Both {
  readonly problem: Problem;
  readonly mirror: Problem;
}

/** What the cook wants: when to eat (milliseconds from now; null: soon), and what to do first. */
export interface Goal {
  readonly serveAt: number | null;
  /** Acts with what they wait for, the most urgent first. */
  readonly first: readonly number[];
}

/** A schedule as soon as possible by one rule, and when it is ready. */
export interface Soonest {
  readonly rule: Rule;
  readonly schedule: Schedule;
  readonly ready: number;
}

/** A finished schedule with what is to be said against it. */
export interface Candidate {
  readonly rule: Rule;
  readonly schedule: Schedule;
  readonly verdict: Verdict;
}

/** Slack before serving, as a part of the time that the work takes; measured to be enough nearly always. */
const SLACK = 0.1;
/** Rounds in which a dinner that comes out later than planned for is planned for that later moment. */
const ROUNDS = 3;
/** Rounds of delaying what comes too early for what follows it. */
const DELAYS = 4;

/** Those that go first get ranks before all others. */
function withFirst(rank: readonly number[], first: readonly number[]): readonly number[] {
  return rank.map((place, index) =>
    first.includes(index) ? first.indexOf(index) - first.length - 1 : place,
  );
}

/** Everything as soon as it goes, by one rule. */
export function soonest({ problem }: Both, rule: Rule, goal: Goal): Soonest {
  const release = problem.acts.map((act) => act.release);
  const schedule = generate(problem, { ...rule, rank: withFirst(rule.rank, goal.first) }, release);
  return { rule, schedule, ready: readyOf(problem, schedule) };
}

/**
 * The latest starts for a table at `serving`, with all ready `slack` before it as far as it keeps: in the
 * opposite order of `soon`, what keeps least nearest to the table.
 */
function latestStarts({ problem, mirror }: Both, soon: Soonest, serving: number, slack: number) {
  const freshness = problem.acts.map((_, index) => keeps(problem, index));
  const release = freshness.map((kept) => Math.min(slack, kept) - serving);
  const value = freshness.map(
    (kept, index) => Math.min(kept, KEEPS_MS) - endOf(problem, soon.schedule, index),
  );
  const turned = generate(mirror, { rank: ranked(value), patience: soon.rule.patience }, release);
  return turned.map((place, index) => -place.start - (problem.acts[index]?.length ?? 0));
}

/** Forward in the order of the latest starts, for a table at `serving`; what comes too early is then delayed. */
function planFor(
  problem: Problem,
  latest: readonly number[],
  patience: number,
  serving: number,
  goal: Goal,
): Candidate {
  const rule = { rank: withFirst(ranked(latest), goal.first), patience };
  let release: readonly number[] = wantedFrom(problem, latest, serving, goal.first);
  let best: Candidate | null = null;
  for (let round = 0; round <= DELAYS; round += 1) {
    const schedule = generate(problem, rule, release);
    const verdict = judge(problem, schedule, goal.serveAt ?? 0);
    if (best === null || isBetter(verdict, best.verdict, goal.serveAt ?? 0))
      best = { rule, schedule, verdict };
    if (verdict.missed === 0 && verdict.waits === 0) break;
    const next = delayed(problem, schedule, release, Math.max(goal.serveAt ?? 0, verdict.ready), goal.first);
    if (next.every((from, index) => from === release[index])) break;
    release = next;
  }
  if (best === null) throw new Error("no round was planned");
  return best;
}

/** The plan that keeps to a course already begun: `starts` are its starts, moved to where the cook stands. */
export function steady(
  { problem }: Both,
  starts: readonly number[],
  patience: number,
  goal: Goal,
): Candidate {
  const ready = starts.reduce(
    (last, start, index) => Math.max(last, start + (problem.acts[index]?.length ?? 0)),
    0,
  );
  return planFor(problem, starts, patience, Math.max(goal.serveAt ?? 0, ready), goal);
}

/**
 * Takes out an idle start: where dinner cannot be too early and nothing runs or begins, all of it moves
 * forward, even at the price of a hold. Else every new plan would put off the first step again, for ever.
 */
export function pulledForward(problem: Problem, made: Candidate, goal: Goal): Candidate {
  const table = goal.serveAt ?? 0;
  const isIdle = problem.acts.every((act) => act.running === null);
  const firstOf = ({ schedule }: Candidate) =>
    schedule.reduce(
      (least, { start }, index) => (problem.acts[index]?.running === null ? Math.min(least, start) : least),
      Infinity,
    );
  let best = made;
  for (let round = 0; round < ROUNDS && best.verdict.ready > table; round += 1) {
    const gap = firstOf(best);
    if (gap <= 0 || gap === Infinity) break;
    const starts = best.schedule.map((place) => place.start);
    const release = problem.acts.map((act, index) => Math.max(act.release, (starts[index] ?? 0) - gap));
    const schedule = generate(problem, { rank: ranked(starts), patience: made.rule.patience }, release);
    const pulled = { ...best, schedule, verdict: judge(problem, schedule, table) };
    const isWorth = isIdle ? firstOf(pulled) < gap : isBetter(pulled.verdict, best.verdict, table);
    if (!isWorth) break;
    best = pulled;
  }
  return best;
}

/**
 * One plan: as soon as possible to see how long it takes (`soon`); from the serving moment, less some slack,
 * backwards as late as possible; then forward again in that order, hands-on preparation early, hot things no
 * earlier than they were.
 */
export function candidate(both: Both, soon: Soonest, goal: Goal): Candidate {
  let serving = Math.max(goal.serveAt ?? 0, soon.ready);
  let best: Candidate | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const slack = Math.min(SLACK * soon.ready, serving - soon.ready);
    const latest = latestStarts(both, soon, serving, slack);
    const made = planFor(both.problem, latest, soon.rule.patience, serving, goal);
    if (best === null || isBetter(made.verdict, best.verdict, goal.serveAt ?? 0)) best = made;
    if (made.verdict.ready <= serving) break;
    serving = made.verdict.ready;
  }
  if (best === null) throw new Error("no round was planned");
  return pulledForward(both.problem, best, goal);
}

/** How much later each act of a finished plan could start without making dinner later, in milliseconds. */
export function slackOf(both: Both, made: Candidate, goal: Goal): readonly number[] {
  const { schedule, rule, verdict } = made;
  const table = Math.max(goal.serveAt ?? 0, verdict.ready);
  const latest = latestStarts(both, { rule, schedule, ready: verdict.ready }, table, 0);
  return latest.map((start, index) => {
    const isRunning = both.problem.acts[index]?.running !== null;
    return isRunning ? 0 : Math.max(0, start - (schedule[index]?.start ?? 0));
  });
}
