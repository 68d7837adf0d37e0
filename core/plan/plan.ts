import type { Both, Candidate, Goal } from "./improve.ts";
import { candidate, pulledForward, soonest, steady } from "./improve.ts";
import { isBetter, isWorthwhile } from "./judge.ts";
import { lacks, settled } from "./limits.ts";
import type { PlanInput, Planner, Task, TaskId } from "./model.ts";
import { ranked, rules, tails } from "./orders.ts";
import type { Problem } from "./problem.ts";
import { mirrored, problemOf } from "./problem.ts";
import { sheetOf } from "./sheet.ts";

/** How the whole meal goes best when begun at nought: the start of each task, in milliseconds. */
interface Course {
  readonly meal: PlanInput["meal"];
  readonly starts: ReadonlyMap<TaskId, number>;
  readonly patience: number;
}

/** A meal's course depends on the meal alone, so it is worked out once and then only looked up. */
const courses = new WeakMap<readonly Task[], Course>();

/** How many of the orders are worked out to the end: those that are ready first. */
const FINALISTS = 4;
/** How often the best of them is planned again in its own order. */
const REFINEMENTS = 4;

function best(both: Both, goal: Goal): Candidate | null {
  const tried = rules(both.problem).map((rule) => soonest(both, rule, goal));
  tried.sort((a, b) => a.ready - b.ready);
  return tried.slice(0, FINALISTS).reduce<Candidate | null>((leader, soon) => {
    const made = candidate(both, soon, goal);
    return leader === null || isBetter(made.verdict, leader.verdict, goal.serveAt ?? 0) ? made : leader;
  }, null);
}

/** Plans again in the order of the best plan, as long as that makes it better. */
function refined(both: Both, goal: Goal): Candidate | null {
  let leader = best(both, goal);
  for (let round = 0; round < REFINEMENTS && leader !== null; round += 1) {
    const rank = ranked(leader.schedule.map((place) => place.start));
    const again = candidate(both, soonest(both, { rank, patience: leader.rule.patience }, goal), goal);
    if (!isBetter(again.verdict, leader.verdict, goal.serveAt ?? 0)) break;
    leader = again;
  }
  return leader;
}

const bothWays = (problem: Problem): Both => ({ problem, mirror: mirrored(problem) });

/**
 * The best order for the meal as if nothing had begun. Every later plan starts from it, so that the cook's
 * order of work does not flap from minute to minute.
 */
function courseOf(input: PlanInput): Course {
  const known = courses.get(input.tasks);
  if (known?.meal === input.meal) return known;
  const { problem } = settled(problemOf({ ...input, progress: new Map(), ovens: [] }));
  const leader = refined(bothWays(problem), { serveAt: null, first: [] });
  const course: Course = {
    meal: input.meal,
    starts: new Map(problem.acts.map((act, index) => [act.task.id, leader?.schedule[index]?.start ?? 0])),
    patience: leader?.rule.patience ?? 0,
  };
  courses.set(input.tasks, course);
  return course;
}

/** A follower goes before everything else once its last moment is this near, in milliseconds. */
const URGENT_MS = 20 * 60_000;

/** Whether what is over, or runs, leaves this act little time to follow. */
function isUrgent(problem: Problem, at: number): boolean {
  const limits = (problem.before[at] ?? []).flatMap((arc) => {
    const running = problem.acts[arc.from]?.running ?? null;
    if (arc.atMost === null || running === null) return [];
    return arc.atMost - arc.atLeast < URGENT_MS ? 0 : running.end + arc.atMost;
  });
  return Math.min(problem.acts[at]?.latest ?? Infinity, ...limits) <= URGENT_MS;
}

/** The acts that go first, each after what it waits for: what cannot wait, the focus, then the wishes. */
function firstActs(problem: Problem, input: PlanInput): readonly number[] {
  const index = new Map(problem.acts.map((act, at) => [act.task.id, at]));
  const first = new Set<number>();
  const add = (at: number, seen: ReadonlySet<number>): void => {
    if (first.has(at) || seen.has(at) || problem.acts[at]?.running !== null) return;
    (problem.before[at] ?? []).forEach((arc) => add(arc.from, new Set([...seen, at])));
    first.add(at);
  };
  const find = (id: TaskId | null): readonly number[] => {
    const at = id === null ? undefined : index.get(id);
    return at === undefined ? [] : [at];
  };
  find(input.focus).forEach((at) => add(at, new Set()));
  problem.acts.forEach((_, at) => {
    if (isUrgent(problem, at)) add(at, new Set());
  });
  input.first.flatMap(find).forEach((at) => add(at, new Set()));
  return [...first];
}

function isClean(made: Candidate, goal: Goal, leastMs: number): boolean {
  const { missed, waits, ready } = made.verdict;
  return missed === 0 && waits === 0 && ready <= Math.max(goal.serveAt ?? 0, leastMs);
}

/** How far the cook is behind the course, in milliseconds from now: by what was begun the latest. */
function behind(course: Course, input: PlanInput): number {
  const lags = input.tasks.flatMap((task) => {
    const progress = input.progress.get(task.id);
    const started = progress?.state === "running" || progress?.state === "done" ? progress.startedAt : null;
    return started === null ? [] : [started - input.now - (course.starts.get(task.id) ?? 0)];
  });
  return lags.length === 0 ? 0 : Math.max(...lags);
}

/** The course from where the cook stands, or the usual way of planning it: what keeps the order of work. */
function usualPlan(both: Both, input: PlanInput, goal: Goal): Candidate {
  const course = courseOf(input);
  const starts = both.problem.acts.map((act) => course.starts.get(act.task.id) ?? 0);
  const soon = soonest(both, { rank: ranked(starts), patience: course.patience }, goal);
  const usual = candidate(both, soon, goal);
  if (goal.serveAt !== null && usual.verdict.ready <= goal.serveAt) return usual;
  const late = behind(course, input);
  const kept = steady(
    both,
    starts.map((start) => start + late),
    course.patience,
    goal,
  );
  return isWorthwhile(usual.verdict, kept.verdict, goal.serveAt ?? 0)
    ? usual
    : pulledForward(both.problem, kept, goal);
}

function chosen(problem: Problem, input: PlanInput): Candidate {
  const goal: Goal = {
    serveAt: input.serveAt === null ? null : input.serveAt - input.now,
    first: firstActs(problem, input),
  };
  const both = bothWays(problem);
  const usual = usualPlan(both, input, goal);
  const runs = problem.acts.map((act) => act.running?.start ?? 0);
  const least = Math.max(0, ...tails(problem).map((tail, index) => tail + (runs[index] ?? 0)));
  if (isClean(usual, goal, least)) return usual;
  const other = best(both, goal);
  const isOther = other !== null && isWorthwhile(other.verdict, usual.verdict, goal.serveAt ?? 0);
  return isOther ? other : usual;
}

/**
 * The first engine behind the `Planner` seam: serial schedule generation by several fixed orders, made late
 * from the serving moment backwards and then early again where that does no harm. Hands-on and unattended
 * tasks are planned with the middle of their range: `end` is that planned end, `look` the earliest one.
 * See docs/decisions/0004-first-plan-engine.md.
 */
export const plan: Planner = (input) => {
  const { problem, broken } = settled(problemOf(input));
  return sheetOf(problem, chosen(problem, input), input, [...lacks(input.meal, input.tasks), ...broken]);
};
