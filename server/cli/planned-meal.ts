import { tasksAtPace, type PacesOf } from "../../core/pace/known-paces.ts";
import { timesOf, type Pace } from "../../core/pace/pace.ts";
import { beginningOf, type PlannedEvening } from "../../core/plan/big-moments.ts";
import { criticalChain } from "../../core/plan/critical-chain.ts";
import { whatToLeaveOut, type LeftOut } from "../../core/plan/leave-out.ts";
import { lullWork, type LullWork } from "../../core/plan/lull-work.ts";
import type { PlanInput, TaskId } from "../../core/plan/model.ts";
import { outlookOf, type Outlook } from "../../core/plan/on-time.ts";
import { plan } from "../../core/plan/plan.ts";
import type { Helper } from "../../core/plan/worker.ts";
import { coldStart, inBestWays } from "../../core/plan/ways.ts";
import { instant, later, type Instant, type Seconds } from "../../core/units/quantity.ts";
import type { Heat } from "../../core/units/temperature.ts";
import { takesMinutes } from "../kitchen/meal-book.ts";
import { entersAt, type FoundMeal } from "./find-meal.ts";

/** A meal planned from a cold kitchen, before anything was done. */
export interface PlannedMeal extends PlannedEvening {
  /** The first act: a step, or the turn of an oven. */
  readonly beginsAt: Instant;
  /** Those that dinner waits for: a minute later with one of them is a minute later at the table. */
  readonly chain: ReadonlySet<TaskId>;
  /** What each oven is set to beforehand: nothing, in a cold kitchen. */
  readonly setTo: ReadonlyMap<string, Heat | null>;
  /** How it fares where steps take shorter or longer than planned. */
  readonly outlook: Outlook;
  /** Where dinner cannot be ready in time: the dishes without which it would be sooner; the soonest first. */
  readonly leaveOut: readonly LeftOut[];
  /** What stays to do by hand in the lull before serving; null where none was wished for. */
  readonly lull: { readonly length: Seconds; readonly work: LullWork } | null;
  /** The kinds of work in it for which this cook takes another time than the recipes say. */
  readonly paces: readonly Pace[];
}

/** What a plan from a cold kitchen is asked for. */
interface Asked {
  readonly serveAt: Instant | null;
  /** Who helps the cook. */
  readonly helping: readonly Helper[];
  /** How long before serving the hands are to be free; null: not at all. */
  readonly lull: Seconds | null;
  readonly pacesOf: PacesOf;
}

/** So many evenings are simulated: the share in time is right to two or three hundredths. */
const simulated = { seed: 1, evenings: 400 };

const minuteMs = 60_000;

/**
 * When the evening begins: with the usual slack, at once where that is past or no time was named. Planned from the
 * morning on, small jobs would lie hours apart; and the sheet for half past six would change with the hour at which one
 * asks.
 */
function enters({ meal }: FoundMeal, { serveAt, helping, pacesOf }: Asked, now: Instant): Instant {
  const next = instant(Math.ceil(now / minuteMs) * minuteMs);
  if (serveAt === null) return next;
  const takes = takesMinutes(meal, pacesOf, helping);
  return later(next, instant(entersAt(takes, serveAt / minuteMs) * minuteMs));
}

/** The run sheet of a meal that nobody has begun. */
export function plannedMeal(found: FoundMeal, asked: Asked, now: Instant): PlannedMeal {
  const { serveAt, helping, lull: length, pacesOf } = asked;
  const from = enters(found, asked, now);
  const tasksOf = tasksAtPace(pacesOf);
  const meal = inBestWays(found.meal, serveAt, from, tasksOf, helping);
  const tasks = tasksOf(meal);
  const input: PlanInput = { ...coldStart(meal, serveAt, from, helping), tasks, lull: length };
  const sheet = plan(input);
  const outlook = outlookOf(input, sheet, simulated);
  const chain = new Set(criticalChain(input, sheet));
  const setTo = new Map(input.ovens.map(({ oven, heat }) => [oven, heat]));
  const leaveOut = whatToLeaveOut(input, sheet);
  const paces = pacesOf(meal).filter((pace) => pace.of.length > 0 && timesOf(pace) !== 1);
  const lull = length === null ? null : { length, work: lullWork(input, sheet) };
  return {
    meal,
    tasks,
    sheet,
    serveAt,
    beginsAt: beginningOf(sheet),
    chain,
    setTo,
    outlook,
    leaveOut,
    lull,
    paces,
  };
}
