import { courseFrom, isCourseOf, refined } from "./course.ts";
import { draftsOf, type Drafts } from "./drafts.ts";
import type { Network } from "./engine/network.ts";
import { search } from "./engine/search.ts";
import { firstActs } from "./first.ts";
import { inHands } from "./hands.ts";
import { settled } from "./limits.ts";
import type { Course, CourseStep, PlanInput, RunSheet, TaskId } from "./model.ts";
import { plan } from "./plan.ts";
import { problemOf } from "./problem.ts";
import { sheetCost, type SheetCost } from "./sheet-cost.ts";

/** How far a search for a course goes: the same seed and number of schedules find the same course. */
export interface Reach {
  readonly seed: number;
  /** The most schedules to build, in all. */
  readonly schedules: number;
}

/** So many searches share the schedules out, more where proofs end them sooner: other seeds come to other timetables. */
const LEAST_SEARCHES = 2;
const SEARCHES = 6;

const weighed = ["missed", "late", "waits"] as const;

/** Below 0 where `a` is better: by hard limits, lateness and waits. The cook's hands are no reason to change courses. */
export function compareEvenings(a: SheetCost, b: SheetCost): number {
  const goal = weighed.find((one) => a[one] !== b[one]);
  return goal === undefined ? 0 : a[goal] - b[goal];
}

const hasBegun = (input: PlanInput, task: TaskId): boolean =>
  inHands(input).includes(task) || (input.progress.get(task)?.state ?? "waiting") !== "waiting";

/** What the cook is to begin next, after what is before them now; null where nothing is left to begin. */
const nextToBegin = (input: PlanInput, sheet: RunSheet): TaskId | null =>
  sheet.entries.find(({ task }) => !hasBegun(input, task))?.task ?? null;

/** What has begun or been called, and where a sheet has it. */
const begunIn = (input: PlanInput, sheet: RunSheet): string =>
  JSON.stringify(
    sheet.entries
      .filter(({ task }) => hasBegun(input, task))
      .map(({ task, start, end }) => [task, start, end]),
  );

/** Whether the one sheet goes on as the other: what has begun or been called stays, and so does what comes next. */
export const goesOnAs = (input: PlanInput, sheet: RunSheet, other: RunSheet): boolean =>
  begunIn(input, sheet) === begunIn(input, other) && nextToBegin(input, sheet) === nextToBegin(input, other);

/** Where a task stands that is over or was passed over; milliseconds from now. */
function pastStep(input: PlanInput, task: TaskId): CourseStep {
  const progress = input.progress.get(task);
  const at = progress?.state === "done" ? (progress.startedAt ?? progress.at) : input.now;
  return { start: at - input.now, baking: null };
}

/** The course of the whole meal, by what is left of it; it begins with the first step of the evening. */
function whole(input: PlanInput, left: Course): Course {
  const steps = input.tasks.map(({ id }) => [id, left.get(id) ?? pastStep(input, id)] as const);
  const begins = Math.min(...steps.map(([, { start }]) => start));
  return new Map(steps.map(([id, step]) => [id, { ...step, start: Math.round(step.start - begins) }]));
}

/** The network in which what comes next begins before all that has not begun and need not come before it. */
function beginningWith(drafts: Drafts, next: number, first: readonly number[]): Network {
  const { network } = drafts.both.there.compiled;
  const others = drafts.problem.acts.flatMap((act, other) =>
    act.running !== null || other === next || first.includes(other) ? [] : [other],
  );
  return { ...network, lags: [...network.lags, ...others.map((to) => ({ from: next, to, least: 1 }))] };
}

/** Timetables of what is left of the meal that end as soon as searches find, as courses, as they are and planned anew. */
function found(input: PlanInput, drafts: Drafts, next: TaskId | null, reach: Reach): readonly Course[] {
  const { network } = drafts.both.there.compiled;
  const wishes = next === null ? input.first : [next, ...input.first];
  const first = firstActs(drafts.problem, { ...input, first: wishes }, "as wished");
  const act = drafts.problem.acts.findIndex(({ task }) => task.id === next);
  const told = act < 0 ? network : beginningWith(drafts, act, first);
  const courses: Course[] = [];
  let left = reach.schedules;
  for (let turn = 0; turn < SEARCHES && left > 0; turn += 1) {
    const schedules = Math.min(left, Math.ceil(reach.schedules / LEAST_SEARCHES));
    const { timetable, schedules: built } = search(turn % 2 === 0 ? told : network, {
      seed: reach.seed + turn,
      schedules,
    });
    left -= Math.max(1, built);
    if (timetable === null) continue;
    const schedule = drafts.scheduleOf(timetable);
    const planned = refined(drafts, drafts.orderOf(schedule), { serveAt: null, first }).schedule;
    courses.push(...[schedule, planned].map((one) => whole(input, courseFrom(drafts, one))));
  }
  return courses;
}

/** What a course comes to: tonight, and where that is alike, when dinner is wanted soon: what is left over is slack. */
interface Prospect {
  readonly course: Course;
  readonly sheet: RunSheet;
  readonly tonight: SheetCost;
  readonly soon: SheetCost;
}

function prospect(input: PlanInput, course: Course): Prospect {
  const soon = { ...input, course, serveAt: null };
  const sheet = plan({ ...input, course });
  return { course, sheet, tonight: sheetCost(input, sheet), soon: sheetCost(soon, plan(soon)) };
}

const compareProspects = (a: Prospect, b: Prospect): number =>
  compareEvenings(a.tonight, b.tonight) || compareEvenings(a.soon, b.soon);

/**
 * Looks for a course that makes a better evening than the one that is followed, by the plans that are made of both. It
 * changes nothing that has begun or been called, nor what comes next. Too long for a page; the same for the same reach.
 * @returns null where it finds none
 */
export function betterCourse(input: PlanInput, reach: Reach): Course | null {
  const { drafts } = draftsOf(settled(problemOf(input)).problem);
  const kept = plan(input);
  const soon = { ...input, serveAt: null };
  const usual = { tonight: sheetCost(input, kept), soon: sheetCost(soon, plan(soon)) };
  const prospects = found(input, drafts, nextToBegin(input, kept), reach)
    .filter((course) => isCourseOf(course, input.tasks))
    .map((course) => prospect(input, course))
    .filter(({ sheet }) => goesOnAs(input, sheet, kept))
    // Of two evenings alike the one that is ready later has less slack left.
    .filter(
      ({ sheet, tonight }) => compareEvenings(tonight, usual.tonight) < 0 || sheet.readyAt <= kept.readyAt,
    )
    .toSorted(compareProspects);
  const best = prospects.find((one) => compareProspects(one, { ...one, ...usual }) < 0);
  return best?.course ?? null;
}
