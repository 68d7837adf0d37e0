import { behind, courseOf, orderIn, refined, walkOn } from "./course.ts";
import { draftsOf, type Drafts, type Order } from "./drafts.ts";
import { Walk } from "./engine/walk.ts";
import { firstActs } from "./first.ts";
import { inHands } from "./hands.ts";
import type { Candidate, Goal } from "./improve.ts";
import { candidate, gentler, pulledForward, slackOf, soonest, steady } from "./improve.ts";
import { isBetter, isWorthwhile, judge } from "./judge.ts";
import { keptHeat } from "./kept-heat.ts";
import { lacks, settled } from "./limits.ts";
import type { PlanInput, Planner, Task } from "./model.ts";
import { problemOf } from "./problem.ts";
import { sheetOf } from "./sheet.ts";

/** How much work the walk may do for another order, and how often it stops to have its best one planned whole. */
const WORK = 8_000;
const STOPS = 3;
const SEED = 1;

interface Begun {
  readonly drafts: Drafts;
  /** What had to be let go, one sentence each. */
  readonly broken: readonly string[];
  readonly goal: Goal;
}

function begun(input: PlanInput): Begun {
  const { problem, broken } = settled(problemOf(input));
  const { drafts, broken: more } = draftsOf(problem);
  const serveAt = input.serveAt === null ? null : input.serveAt - input.now;
  const goal = { serveAt, first: firstActs(drafts.problem, input, "as wished") };
  return { drafts, broken: [...broken, ...more], goal };
}

/** Whether nothing that comes before the cook's wish for a lull could be better. */
function isUntroubled({ verdict }: Candidate, goal: Goal, leastMs: number): boolean {
  return verdict.missed === 0 && verdict.waits === 0 && verdict.ready <= Math.max(goal.serveAt ?? 0, leastMs);
}

const isClean = (made: Candidate, goal: Goal, leastMs: number): boolean =>
  made.verdict.lullWork === 0 && isUntroubled(made, goal, leastMs);

/**
 * Whether a walk has found this order already: nothing has been done or set going yet, so the course that was made at once
 * is as good as another walk. A course that was laid is worth one.
 */
function isFresh(input: PlanInput): boolean {
  const { course, first, progress, tasks } = input;
  const held = inHands(input);
  const isWaiting = ({ id }: Task): boolean =>
    held.includes(id) || (progress.get(id)?.state ?? "waiting") === "waiting";
  return course === undefined && first.length === 0 && tasks.every(isWaiting);
}

/** The work in this order, moved on by what the cook is behind it, or planned anew where that is worth it. */
function inOrder(drafts: Drafts, order: Order, lateMs: number, goal: Goal): Candidate {
  const usual = candidate(drafts, soonest(drafts, order, goal), goal);
  if (goal.serveAt !== null && usual.verdict.ready <= goal.serveAt) return usual;
  const kept = steady(drafts, { ...order, keys: order.keys.map((start) => start + lateMs) }, goal);
  const isWorth = isWorthwhile(usual.verdict, kept.verdict, goal.serveAt ?? 0);
  return isWorth ? usual : pulledForward(drafts, kept, goal);
}

/** The best plan of those that a walk comes by; null where there is nothing to plan. */
function walked(drafts: Drafts, from: Candidate, goal: Goal): Candidate | null {
  const walk = new Walk(drafts.both, SEED);
  walk.goOnFrom(drafts.timetableOf(from.schedule));
  let best: Candidate | null = null;
  for (let stop = 0, seen = -1; stop < STOPS; stop += 1) {
    const schedule = walkOn(drafts, walk, WORK / STOPS);
    if (schedule === null || walk.end === seen) continue;
    seen = walk.end;
    const made = refined(drafts, keptHeat(drafts.problem, drafts.orderOf(schedule), "each"), goal);
    if (best === null || isBetter(made.verdict, best.verdict, goal.serveAt ?? 0)) best = made;
  }
  return best;
}

function chosen({ drafts, goal }: Begun, input: PlanInput, first: Goal["first"]): Candidate {
  const wanted = { ...goal, first };
  const course = courseOf(input, drafts);
  const order = keptHeat(drafts.problem, orderIn(course, drafts), "together");
  const usual = inOrder(drafts, order, behind(course, input), wanted);
  if (isClean(usual, wanted, drafts.bound)) return usual;
  if (usual.verdict.missed === 0 && isFresh(input)) return usual;
  const other = walked(drafts, usual, wanted);
  const isWorth = other !== null && isWorthwhile(other.verdict, usual.verdict, goal.serveAt ?? 0);
  return isWorth ? other : usual;
}

/** Followers are put first only where their last moment would be missed otherwise: it turns the order over. */
function lookedOver(begun: Begun, input: PlanInput): Candidate {
  const { drafts, goal } = begun;
  const usual = chosen(begun, input, goal.first);
  if (usual.verdict.missed === 0) return usual;
  const other = chosen(begun, input, firstActs(drafts.problem, input, "followers too"));
  return isWorthwhile(other.verdict, usual.verdict, goal.serveAt ?? 0) ? other : usual;
}

/**
 * With a lull wished for, the search goes other ways, and may miss on them what it would have found without: where
 * anything of more weight is left to better, the plan without the wish has its say too.
 */
function lookedOverTwice(start: Begun, input: PlanInput): Candidate {
  const made = lookedOver(start, input);
  const { drafts, goal } = start;
  if (input.lull === null || isUntroubled(made, goal, drafts.bound)) return made;
  const plain = { ...input, lull: null };
  const { schedule } = lookedOver(begun(plain), plain);
  const verdict = judge(drafts.problem, schedule, goal.serveAt ?? 0);
  return isBetter(verdict, made.verdict, goal.serveAt ?? 0) ? { schedule, verdict } : made;
}

/** What was made of the evening when something last happened; `input` is the evening at that moment. */
interface Standing {
  readonly input: PlanInput;
  readonly begun: Begun;
  readonly made: Candidate;
}

/** Kept as long as what has become of the tasks is. */
const standings = new WeakMap<PlanInput["progress"], Standing>();

const isSame = (one: PlanInput, other: PlanInput): boolean =>
  one.since === other.since &&
  one.meal === other.meal &&
  one.tasks === other.tasks &&
  one.serveAt === other.serveAt &&
  one.lull === other.lull &&
  one.focus === other.focus &&
  one.helpers === other.helpers &&
  one.ovens === other.ovens &&
  one.first === other.first &&
  one.course === other.course;

/** The plan as it is looked over when something has happened. */
function standingFor(input: PlanInput): Standing {
  const known = standings.get(input.progress);
  if (known !== undefined && isSame(known.input, input)) return known;
  const then = { ...input, now: input.since };
  const start = begun(then);
  const made = gentler(start.drafts, lookedOverTwice(start, then), start.goal);
  const standing = { input: then, begun: start, made };
  standings.set(input.progress, standing);
  return standing;
}

/** The plan that goes on with what was looked over, a while later: nothing has happened but that time went by. */
function goneOn(standing: Standing, later: Begun, passedMs: number): Candidate {
  const { drafts, goal } = later;
  const { keys, bakings } = standing.begun.drafts.orderOf(standing.made.schedule);
  const starts = keys.map((start) => start - passedMs);
  const waiting = starts.filter((_, index) => drafts.problem.acts[index]?.running === null);
  const late = Math.max(0, ...waiting.map((start) => -start));
  return inOrder(drafts, { keys: starts, bakings }, late, goal);
}

/**
 * The engine behind the `Planner` seam. When something happens, the work is put in the order of the course, made late
 * from the serving moment backwards and then early again where that does no harm; where that breaks a limit or comes
 * late, a walk looks for another order. Until something else happens that order stands. Tasks are planned with the
 * middle of their range: `end` is that planned end, `look` the earliest one. See docs/decisions/0017-one-engine.md.
 */
export const plan: Planner = (input) => {
  const standing = standingFor(input);
  const passedMs = input.now - input.since;
  const present = passedMs === 0 ? standing.begun : begun(input);
  const made = passedMs === 0 ? standing.made : goneOn(standing, present, passedMs);
  const { drafts, broken, goal } = present;
  const told = [...lacks(input.meal, input.tasks), ...broken];
  return sheetOf(drafts.problem, { ...made, slack: slackOf(drafts, made, goal) }, input, told);
};
