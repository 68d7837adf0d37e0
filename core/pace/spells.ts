import type { Happening, MealEvent } from "../cook/events.ts";
import { undoneCommands } from "../cook/fold.ts";
import type { TaskId } from "../plan/model.ts";
import { expandTasks, plannedLength } from "../plan/tasks.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type { Instant } from "../units/quantity.ts";
import type { WorkKind } from "./pace.ts";
import { workKind } from "./work-kind.ts";

/** One step done in one go: how long it took against the middle of its recipe's range. */
export interface Spell {
  readonly kind: WorkKind;
  readonly ratio: number;
  /** When it was finished. */
  readonly at: Instant;
}

/** Shorter than this, or than a fifth of what was planned, it was done before and ticked off later. */
const tickedOff = { ms: 10_000, ratio: 0.2 };
/** Longer than this, or than five times what was planned, it was left open. */
const leftOpen = { ms: 2 * 3_600_000, ratio: 5 };

/** The step in hand. `isCalledAway`: something else was seen to meanwhile, so its time is not its own. */
interface InHand {
  readonly task: TaskId;
  readonly from: Instant;
  readonly heldBefore: number;
  readonly isCalledAway: boolean;
}

/** A spell before it is judged. */
interface Run {
  readonly task: TaskId;
  readonly from: Instant;
  readonly to: Instant;
  readonly workedMs: number;
  readonly isWhole: boolean;
}

interface Walk {
  readonly hand: InHand | null;
  readonly heldSince: Instant | null;
  readonly heldMs: number;
  /** Steps that were put aside: what is left of them later is not the whole step. */
  readonly begunBefore: ReadonlySet<TaskId>;
  /** What somebody else does. */
  readonly handed: ReadonlySet<TaskId>;
  readonly runs: readonly Run[];
}

const start: Walk = {
  hand: null,
  heldSince: null,
  heldMs: 0,
  begunBefore: new Set(),
  handed: new Set(),
  runs: [],
};

function finished(walk: Walk, task: TaskId, at: Instant): Walk {
  const { hand } = walk;
  if (hand === null || walk.handed.has(task)) return walk;
  if (hand.task !== task) return { ...walk, hand: { ...hand, isCalledAway: true } };
  const isWhole = !hand.isCalledAway && walk.heldSince === null && !walk.begunBefore.has(task);
  const workedMs = at - hand.from - (walk.heldMs - hand.heldBefore);
  return { ...walk, hand: null, runs: [...walk.runs, { task, from: hand.from, to: at, workedMs, isWhole }] };
}

function putAside(walk: Walk, task: TaskId): Walk {
  const hand = walk.hand?.task === task ? null : walk.hand;
  return { ...walk, hand, begunBefore: new Set(walk.begunBefore).add(task) };
}

const putsAside: ReadonlySet<Happening["type"]> = new Set(["TaskSetAside", "TaskSkipped", "TaskReopened"]);
const callsAway: ReadonlySet<Happening["type"]> = new Set(["TaskStarted", "AttentionGiven", "RingAnswered"]);

function step(walk: Walk, { happening, at }: MealEvent): Walk {
  const { hand, heldSince, heldMs } = walk;
  if (happening.type === "TaskCalled") {
    const handed = new Set([...walk.handed].filter((task) => task !== happening.task));
    return {
      ...walk,
      handed,
      hand: { task: happening.task, from: at, heldBefore: heldMs, isCalledAway: false },
    };
  }
  if (happening.type === "TaskHanded") return { ...walk, handed: new Set(walk.handed).add(happening.task) };
  if (happening.type === "TaskFinished") return finished(walk, happening.task, at);
  if ("task" in happening && happening.task !== null && putsAside.has(happening.type))
    return putAside(walk, happening.task);
  if (hand !== null && callsAway.has(happening.type))
    return { ...walk, hand: { ...hand, isCalledAway: true } };
  if (happening.type === "EverythingHeld") return { ...walk, heldSince: at };
  if (happening.type === "WentOn" && heldSince !== null)
    return { ...walk, heldSince: null, heldMs: heldMs + (at - heldSince) };
  return walk;
}

function judged(runs: readonly Run[], meal: CookingMeal): readonly Spell[] {
  const steps = new Map(expandTasks(meal).map((task) => [task.id, task.step]));
  const measured = runs.flatMap((run) => {
    const recipe = steps.get(run.task);
    const ratio = recipe === undefined ? Number.NaN : run.workedMs / 1000 / plannedLength(recipe.time);
    const kind = recipe === undefined ? null : workKind(recipe);
    return kind === null || !Number.isFinite(ratio) ? [] : [{ ...run, kind, ratio }];
  });
  const isTickedOff = ({ workedMs, ratio }: (typeof measured)[number]): boolean =>
    workedMs < tickedOff.ms || ratio < tickedOff.ratio;
  return measured.flatMap((run, index): readonly Spell[] => {
    const next = measured[index + 1];
    // Ticked off one after the other: the first of them has the time of all.
    const isOfSeveral = next !== undefined && next.from === run.to && isTickedOff(next);
    const isLeftOpen = run.workedMs > leftOpen.ms || run.ratio > leftOpen.ratio;
    if (!run.isWhole || isOfSeveral || isLeftOpen || isTickedOff(run)) return [];
    return [{ kind: run.kind, ratio: run.ratio, at: run.to }];
  });
}

/**
 * What one evening's log tells of the cook's pace: hands-on steps from their call to their end, without pauses. Left out:
 * what was undone, put aside, done in several goes or while something else was seen to, ticked off later, or left open.
 */
export function spellsOf(events: readonly MealEvent[]): readonly Spell[] {
  const undone = undoneCommands(events);
  const begun = events.find(({ happening }) => happening.type === "MealBegun")?.happening;
  if (begun?.type !== "MealBegun") return [];
  const walk = events.filter(({ command }) => !undone.has(command)).reduce(step, start);
  return judged(walk.runs, begun.meal);
}
