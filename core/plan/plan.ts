import { behind, bestPlan, bothWays, courseOf } from "./course.ts";
import { firstActs } from "./first.ts";
import type { Both, Candidate, Goal } from "./improve.ts";
import { candidate, pulledForward, slackOf, soonest, steady } from "./improve.ts";
import { isWorthwhile } from "./judge.ts";
import { lacks, settled } from "./limits.ts";
import type { PlanInput, Planner } from "./model.ts";
import { ranked, tails } from "./orders.ts";
import { problemOf } from "./problem.ts";
import { sheetOf } from "./sheet.ts";

function isClean(made: Candidate, goal: Goal, leastMs: number): boolean {
  const { missed, waits, ready } = made.verdict;
  return missed === 0 && waits === 0 && ready <= Math.max(goal.serveAt ?? 0, leastMs);
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

function chosen(both: Both, input: PlanInput, goal: Goal): Candidate {
  const { problem } = both;
  const usual = usualPlan(both, input, goal);
  const runs = problem.acts.map((act) => act.running?.start ?? 0);
  const least = Math.max(0, ...tails(problem).map((tail, index) => tail + (runs[index] ?? 0)));
  if (isClean(usual, goal, least)) return usual;
  const other = bestPlan(both, goal);
  const isOther = other !== null && isWorthwhile(other.verdict, usual.verdict, goal.serveAt ?? 0);
  return isOther ? other : usual;
}

/** Followers are put first only where their last moment would be missed otherwise: it turns the order over. */
function finished(both: Both, input: PlanInput, goal: Goal): Candidate {
  const usual = chosen(both, input, goal);
  if (usual.verdict.missed === 0) return usual;
  const other = chosen(both, input, { ...goal, first: firstActs(both.problem, input, "followers too") });
  return isWorthwhile(other.verdict, usual.verdict, goal.serveAt ?? 0) ? other : usual;
}

/**
 * The first engine behind the `Planner` seam: serial schedule generation by several fixed orders, made late
 * from the serving moment backwards and then early again where that does no harm. Hands-on and unattended
 * tasks are planned with the middle of their range: `end` is that planned end, `look` the earliest one.
 * See docs/decisions/0004-first-plan-engine.md.
 */
export const plan: Planner = (input) => {
  const { problem, broken } = settled(problemOf(input));
  const both = bothWays(problem);
  const goal: Goal = {
    serveAt: input.serveAt === null ? null : input.serveAt - input.now,
    first: firstActs(problem, input, "as wished"),
  };
  const made = finished(both, input, goal);
  const told = [...lacks(input.meal, input.tasks), ...broken];
  return sheetOf(problem, { ...made, slack: slackOf(both, made, goal) }, input, told);
};
