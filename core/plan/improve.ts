import type { Drafts, Order, Schedule } from "./drafts.ts";
import type { Verdict } from "./judge.ts";
import { endOf, isBetter, isWorthwhile, judge } from "./judge.ts";
import { strainedReady } from "./strain.ts";
import { KEEPS_MS, delayed, keeps, wantedFrom } from "./releases.ts";

/** What the cook wants: when to eat (milliseconds from now; null: soon), and what to do first. */
export interface Goal {
  readonly serveAt: number | null;
  /** Acts with what they wait for, the most urgent first. */
  readonly first: readonly number[];
}

/** A schedule as soon as possible in one order, and when it is ready. */
export interface Soonest {
  readonly schedule: Schedule;
  readonly ready: number;
}

/** A finished schedule with what is to be said against it. */
export interface Candidate {
  readonly schedule: Schedule;
  readonly verdict: Verdict;
}

/** Keys before all others; far beyond any moment. */
const FIRST = 1e12;
/** Slack before serving, as a part of the time that the work takes; measured to be enough nearly always. */
const SLACK = 0.1;
/** What is left of it to the end: the last steps are no surer than the first. */
const LEAST_SLACK_MS = 5 * 60_000;
/** Slack that there is is not idled away as the work that is left grows less: what is hot comes this much before serving. */
const KEPT_SLACK_MS = 10 * 60_000;
/** By how much sooner a plan must be ready where steps last long, to be called surer. */
const SURER_MS = 60_000;
/** Rounds in which a dinner that comes out later than planned for is planned for that later moment. */
const ROUNDS = 3;
/** Rounds of delaying what comes too early for what follows it. */
const DELAYS = 4;
/** The same for a gentler plan: more brought nothing, and the first plan waits for it. */
const GENTLE_DELAYS = 1;

/** Those that go first get keys before all others. */
function withFirst(keys: readonly number[], first: readonly number[]): readonly number[] {
  return keys.map((key, index) => (first.includes(index) ? first.indexOf(index) - FIRST : key));
}

/** Placed in this order, or with what must follow soon placed next: what comes out better, of equals the latter. */
function placed(drafts: Drafts, order: Order, release: readonly number[], serving: number): Candidate {
  const judged = (schedule: Schedule): Candidate => ({
    schedule,
    verdict: judge(drafts.problem, schedule, serving),
  });
  const [told, ...tied] = drafts.forward(order, release);
  return tied.map(judged).reduce((best, one) => {
    return isBetter(best.verdict, one.verdict, serving) ? best : one;
  }, judged(told));
}

/** Everything as soon as it goes, in one order. */
export function soonest(drafts: Drafts, order: Order, goal: Goal): Soonest {
  const release = drafts.problem.acts.map((act) => act.release);
  const { schedule, verdict } = placed(
    drafts,
    { ...order, keys: withFirst(order.keys, goal.first) },
    release,
    0,
  );
  return { schedule, ready: verdict.ready };
}

/** How long before the table all is to be ready, as far as it keeps, and the work by hand that may be over by then. */
interface Spare {
  readonly slack: number;
  readonly lull: number;
}
const NO_SPARE: Spare = { slack: 0, lull: 0 };

/** What comes nearest to the table: what keeps least, or what came last. */
type Nearest = "what keeps least" | "what came last";

/**
 * The latest starts for a table at `serving`, with all ready `slack` before it as far as it keeps: in the
 * opposite order of `soon`.
 */
function latestStarts(
  drafts: Drafts,
  { schedule }: Soonest,
  serving: number,
  { slack, lull }: Spare,
  nearest: Nearest,
) {
  const { problem } = drafts;
  const freshness = problem.acts.map((_, index) => keeps(problem, index));
  const keys = freshness.map((kept, index) => {
    const later = nearest === "what keeps least" ? Math.min(kept, KEEPS_MS) : 0;
    return later - endOf(problem, schedule, index);
  });
  const ends = freshness.map((kept, index) => {
    const spare = Math.min(slack, kept);
    return serving - (problem.mayLeave[index] === true ? Math.max(spare, lull) : spare);
  });
  return drafts.backward({ ...drafts.orderOf(schedule), keys }, ends);
}

/** Forward in the order of the latest starts, for a table at `serving`; what comes too early is then delayed. */
function planFor(drafts: Drafts, latest: Order, serving: number, goal: Goal, delays = DELAYS): Candidate {
  const { problem } = drafts;
  const order = { ...latest, keys: withFirst(latest.keys, goal.first) };
  let release: readonly number[] = wantedFrom(problem, latest.keys, serving, goal.first);
  let best: Candidate | null = null;
  for (let round = 0; round <= delays; round += 1) {
    const made = placed(drafts, order, release, goal.serveAt ?? 0);
    const { schedule, verdict } = made;
    if (best === null || isBetter(verdict, best.verdict, goal.serveAt ?? 0)) best = made;
    if (verdict.missed === 0 && verdict.waits === 0) break;
    const next = delayed(problem, schedule, release, Math.max(goal.serveAt ?? 0, verdict.ready), goal.first);
    if (next.every((from, index) => from === release[index])) break;
    release = next;
  }
  if (best === null) throw new Error("no round was planned");
  return best;
}

/** The plan that keeps to a course already begun: the keys are its starts, moved to where the cook stands. */
export function steady(drafts: Drafts, course: Order, goal: Goal): Candidate {
  const { acts } = drafts.problem;
  const ready = course.keys.reduce((last, start, at) => Math.max(last, start + (acts[at]?.length ?? 0)), 0);
  return planFor(drafts, course, Math.max(goal.serveAt ?? 0, ready), goal);
}

/**
 * Takes out an idle start: where dinner cannot be too early and nothing runs or begins, all of it moves
 * forward, even at the price of a hold. Else every new plan would put off the first step again, for ever.
 */
export function pulledForward(drafts: Drafts, made: Candidate, goal: Goal): Candidate {
  const { problem } = drafts;
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
    const order = drafts.orderOf(best.schedule);
    const release = problem.acts.map((act, index) => Math.max(act.release, (order.keys[index] ?? 0) - gap));
    const pulled = placed(drafts, order, release, table);
    const isWorth = isIdle ? firstOf(pulled) < gap : isBetter(pulled.verdict, best.verdict, table);
    if (!isWorth) break;
    best = pulled;
  }
  return best;
}

/** The slack before serving that is wanted, as far as there is time for it. */
const slackFor = ({ ready }: Soonest, serving: number): number =>
  Math.min(Math.max(LEAST_SLACK_MS, SLACK * ready), serving - ready);

/**
 * The plan that is surest to be in time: the one made back from the table, one made back from it in the order of `soon`,
 * or one in the order of `soon` from now on; of those that are no worse in limits, holds and lull the one that is ready first
 * where all that goes on by itself lasts as long as it may.
 */
function surest(drafts: Drafts, soon: Soonest, made: Candidate, goal: Goal, lull: number): Candidate {
  const { serveAt } = goal;
  if (serveAt === null || serveAt <= soon.ready || made.verdict.ready > serveAt) return made;
  const order = drafts.orderOf(soon.schedule);
  const slack = Math.min(Math.max(KEPT_SLACK_MS, SLACK * soon.ready), serveAt - soon.ready);
  const back = latestStarts(drafts, soon, serveAt, { slack, lull }, "what came last");
  const there = order.keys.map((start) => start + serveAt - slack - soon.ready);
  const others = [back, there].map((keys) => planFor(drafts, { ...order, keys }, serveAt, goal));
  const strains = (one: Candidate): number => strainedReady(drafts.problem, one.schedule);
  let [best, strained] = [made, strains(made)];
  for (const other of others) {
    const { missed, waits, ready, lullWork } = other.verdict;
    if (
      ready > serveAt ||
      lullWork > best.verdict.lullWork ||
      missed > best.verdict.missed ||
      waits > best.verdict.waits
    )
      continue;
    const theirs = strains(other);
    const isCleaner = missed < best.verdict.missed || waits < best.verdict.waits;
    if (isCleaner || theirs < strained - SURER_MS) [best, strained] = [other, theirs];
  }
  return best;
}

/**
 * One plan: as soon as possible to see how long it takes (`soon`); from the serving moment, less some slack,
 * backwards as late as possible; then forward again in that order, hands-on preparation early, hot things no
 * earlier than they were. Where the cook has wished for a lull and work is left in it, once more with that work over by
 * then: it is weighed with the rest, so that it never makes dinner later.
 */
export function candidate(drafts: Drafts, soon: Soonest, goal: Goal): Candidate {
  const usual = candidateWith(drafts, soon, goal, 0);
  const { lull } = drafts.problem;
  if (lull === 0 || usual.verdict.lullWork === 0) return usual;
  const calm = candidateWith(drafts, soon, goal, lull);
  return isBetter(calm.verdict, usual.verdict, goal.serveAt ?? 0) ? calm : usual;
}

function candidateWith(drafts: Drafts, soon: Soonest, goal: Goal, lull: number): Candidate {
  const { bakings } = drafts.orderOf(soon.schedule);
  let serving = Math.max(goal.serveAt ?? 0, soon.ready);
  let best: Candidate | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const spare = { slack: slackFor(soon, serving), lull };
    const keys = latestStarts(drafts, soon, serving, spare, "what keeps least");
    const made = planFor(drafts, { keys, bakings }, serving, goal);
    if (best === null || isBetter(made.verdict, best.verdict, goal.serveAt ?? 0)) best = made;
    if (made.verdict.ready <= serving) break;
    serving = made.verdict.ready;
  }
  if (best === null) throw new Error("no round was planned");
  if (best.verdict.ready > Math.max(goal.serveAt ?? 0, soon.ready)) {
    // On the way back from the table time was lost: as soon as possible may do as it is.
    const kept = steady(drafts, drafts.orderOf(soon.schedule), goal);
    const isSame = kept.verdict.missed === best.verdict.missed && kept.verdict.waits <= best.verdict.waits;
    const isSooner = isSame && kept.verdict.ready < best.verdict.ready;
    if (isSooner || isWorthwhile(kept.verdict, best.verdict, goal.serveAt ?? 0)) best = kept;
  }
  return pulledForward(drafts, surest(drafts, soon, best, goal, lull), goal);
}

/** Made back from the table once more where hot food waits too long: taken where it waits less, and nothing else is worse. */
export function gentler(drafts: Drafts, made: Candidate, goal: Goal): Candidate {
  const { missed, ready, waits } = made.verdict;
  if (waits === 0) return made;
  const table = Math.max(goal.serveAt ?? 0, ready);
  const order = drafts.orderOf(made.schedule);
  const keys = latestStarts(drafts, { schedule: made.schedule, ready }, table, NO_SPARE, "what came last");
  const other = pulledForward(drafts, planFor(drafts, { ...order, keys }, table, goal, GENTLE_DELAYS), goal);
  const isNoWorse = other.verdict.missed <= missed && other.verdict.ready <= table;
  return isNoWorse && other.verdict.waits < waits ? other : made;
}

/** How much later each act of a finished plan could start without making dinner later, in milliseconds. */
export function slackOf(drafts: Drafts, { schedule, verdict }: Candidate, goal: Goal): readonly number[] {
  const table = Math.max(goal.serveAt ?? 0, verdict.ready);
  const planned = { schedule, ready: verdict.ready };
  const latest = latestStarts(drafts, planned, table, NO_SPARE, "what keeps least");
  return latest.map((start, index) => {
    const isRunning = drafts.problem.acts[index]?.running !== null;
    return isRunning ? 0 : Math.max(0, start - (schedule[index]?.start ?? 0));
  });
}
