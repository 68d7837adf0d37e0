import { ANY_BAKING } from "./engine/builder.ts";
import { Walk } from "./engine/walk.ts";
import { bakingAt, draftsOf, type Drafts, type Order, type Schedule } from "./drafts.ts";
import { cooksAt } from "./hands.ts";
import type { Candidate, Goal } from "./improve.ts";
import { candidate, soonest } from "./improve.ts";
import { isBetter } from "./judge.ts";
import { settled } from "./limits.ts";
import type { Course, PlanInput, Task } from "./model.ts";
import { problemOf } from "./problem.ts";

/** A course depends on the meal and on how many cook it alone, so it is worked out once and then only looked up. */
const courses = new WeakMap<
  readonly Task[],
  { readonly meal: PlanInput["meal"]; readonly cooks: number; readonly course: Course }
>();

/** How much work the walk may do for a course that is wanted at once; see Walk. */
const WORK_AT_ONCE = 5_000;
/** Its steps, whatever the work: what is bound to its moment is none. */
const LEAST_STEPS = 4;
const MOST_STEPS = 400;
const SEED = 1;
/** How often the best plan is planned again in its own order. */
const REFINEMENTS = 4;

/** As if nothing had begun and dinner were wanted soon. */
const SOON: Goal = { serveAt: null, first: [] };

/** Whether the evening as it stands is the meal as if nothing had begun, but for the time of dinner. */
const isUntouched = ({ progress, ovens, lull }: PlanInput): boolean =>
  lull === null &&
  ovens.every(({ heat }) => heat === null) &&
  [...progress.values()].every(({ state }) => state === "waiting");

/** The meal as if nothing had begun. @param drafts those of the evening as it stands */
function freshDrafts(input: PlanInput, drafts: Drafts): Drafts {
  if (isUntouched(input)) return drafts;
  return draftsOf(settled(problemOf({ ...input, progress: new Map(), ovens: [], lull: null })).problem)
    .drafts;
}

/** Walks on for so much work; the best schedule met, null where there is nothing to plan. */
export function walkOn(drafts: Drafts, walk: Walk, work: number): Schedule | null {
  const enough = walk.work + work;
  for (let step = 0; step < LEAST_STEPS || (walk.work < enough && step < MOST_STEPS); step += 1) walk.step();
  return walk.nearest === null ? null : drafts.scheduleOf(walk.nearest);
}

/** A candidate in an order, planned again in its own order as long as that makes it better. */
export function refined(drafts: Drafts, order: Order, goal: Goal): Candidate {
  let leader = candidate(drafts, soonest(drafts, order, goal), goal);
  for (let round = 0; round < REFINEMENTS; round += 1) {
    const again = candidate(drafts, soonest(drafts, drafts.orderOf(leader.schedule), goal), goal);
    if (!isBetter(again.verdict, leader.verdict, goal.serveAt ?? 0)) break;
    leader = again;
  }
  return leader;
}

/** A schedule as a course of its acts. */
export function courseFrom({ problem }: Drafts, schedule: Schedule): Course {
  return new Map(
    problem.acts.map(({ task }, index) => {
      const { start, baking } = schedule[index] ?? { start: 0, baking: null };
      const oven = baking === null ? undefined : problem.ovens[baking.oven];
      const baked = baking === null || oven === undefined ? null : { oven: oven.name, heat: baking.heat };
      return [task.id, { start, baking: baked }];
    }),
  );
}

/** Whether a course is one of these tasks: it has a place for each of them, and for no other. */
export const isCourseOf = (course: Course, tasks: readonly Task[]): boolean =>
  course.size === tasks.length && tasks.every(({ id }) => course.has(id));

/**
 * The meal's course: the one that was laid, or where that was for other tasks, one made at once.
 * @param now the drafts of the evening as it stands
 */
export function courseOf(input: PlanInput, now: Drafts): Course {
  if (input.course !== undefined && isCourseOf(input.course, input.tasks)) return input.course;
  const made = courses.get(input.tasks);
  const cooks = cooksAt(input);
  if (made?.meal === input.meal && made.cooks === cooks) return made.course;
  const drafts = freshDrafts(input, now);
  const schedule = walkOn(drafts, new Walk(drafts.both, SEED), WORK_AT_ONCE);
  const fresh =
    schedule === null
      ? new Map()
      : courseFrom(drafts, refined(drafts, drafts.orderOf(schedule), SOON).schedule);
  courses.set(input.tasks, { meal: input.meal, cooks, course: fresh });
  return fresh;
}

/** The order of a course, for what is left of the meal. */
export function orderIn(course: Course, { problem }: Drafts): Order {
  const known = problem.acts.map((act) => course.get(act.task.id));
  return {
    keys: known.map((step) => step?.start ?? 0),
    bakings: problem.acts.map((act, index) => {
      const baking = known[index]?.baking ?? null;
      if (baking === null) return ANY_BAKING;
      const oven = problem.ovens.findIndex(({ name }) => name === baking.oven);
      return bakingAt(act, { oven, heat: baking.heat });
    }),
  };
}

/** How far the cook is behind the course, in milliseconds from now: by what was begun the latest. */
export function behind(course: Course, input: PlanInput): number {
  const lags = input.tasks.flatMap((task) => {
    const progress = input.progress.get(task.id);
    const started = progress?.state === "running" || progress?.state === "done" ? progress.startedAt : null;
    return started === null ? [] : [started - input.now - (course.get(task.id)?.start ?? 0)];
  });
  return lags.length === 0 ? 0 : Math.max(...lags);
}
