import type { Both, Candidate, Goal } from "./improve.ts";
import { candidate, soonest } from "./improve.ts";
import { isBetter } from "./judge.ts";
import { settled } from "./limits.ts";
import type { PlanInput, Task, TaskId } from "./model.ts";
import { ranked, rules } from "./orders.ts";
import type { Problem } from "./problem.ts";
import { mirrored, problemOf } from "./problem.ts";

/** How the whole meal goes best when begun at nought: the start of each task, in milliseconds. */
export interface Course {
  readonly meal: PlanInput["meal"];
  readonly starts: ReadonlyMap<TaskId, number>;
  readonly patience: number;
}

/** A meal's course depends on the meal alone, so it is worked out once and then only looked up. */
const courses = new WeakMap<readonly Task[], Course>();

/** How many placings of an act the search for the best order may take in its first round: it bounds the time. */
const PLACINGS = 1000;
/** As many orders are tried even for a very long meal. */
const LEAST_ORDERS = 4;
/** How many of the orders are worked out to the end: those that are ready first. */
const FINALISTS = 4;
/** How often the best of them is planned again in its own order. */
const REFINEMENTS = 4;

/** The best plan by any of the orders to try; null where there is nothing to plan. */
export function bestPlan(both: Both, goal: Goal): Candidate | null {
  const most = Math.max(LEAST_ORDERS, Math.floor(PLACINGS / Math.max(1, both.problem.acts.length)));
  const tried = rules(both.problem)
    .slice(0, most)
    .map((rule) => soonest(both, rule, goal));
  tried.sort((a, b) => a.ready - b.ready);
  return tried.slice(0, FINALISTS).reduce<Candidate | null>((leader, soon) => {
    const made = candidate(both, soon, goal);
    return leader === null || isBetter(made.verdict, leader.verdict, goal.serveAt ?? 0) ? made : leader;
  }, null);
}

/** Plans again in the order of the best plan, as long as that makes it better. */
function refined(both: Both, goal: Goal): Candidate | null {
  let leader = bestPlan(both, goal);
  for (let round = 0; round < REFINEMENTS && leader !== null; round += 1) {
    const rank = ranked(leader.schedule.map((place) => place.start));
    const again = candidate(both, soonest(both, { rank, patience: leader.rule.patience }, goal), goal);
    if (!isBetter(again.verdict, leader.verdict, goal.serveAt ?? 0)) break;
    leader = again;
  }
  return leader;
}

/** A problem with its mirror. */
export const bothWays = (problem: Problem): Both => ({ problem, mirror: mirrored(problem) });

/**
 * The best order for the meal as if nothing had begun. Every later plan starts from it, so that the cook's
 * order of work does not flap from minute to minute.
 */
export function courseOf(input: PlanInput): Course {
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

/** How far the cook is behind the course, in milliseconds from now: by what was begun the latest. */
export function behind(course: Course, input: PlanInput): number {
  const lags = input.tasks.flatMap((task) => {
    const progress = input.progress.get(task.id);
    const started = progress?.state === "running" || progress?.state === "done" ? progress.startedAt : null;
    return started === null ? [] : [started - input.now - (course.starts.get(task.id) ?? 0)];
  });
  return lags.length === 0 ? 0 : Math.max(...lags);
}
