import type { Instant, Seconds } from "../units/quantity.ts";
import type { CookingMeal, DishId, Span } from "../recipe/model.ts";
import type { Heat } from "../units/temperature.ts";
import type { Note, OfferedNote } from "../next-time/note.ts";
import type { Pace } from "../pace/pace.ts";
import type { Helper } from "../plan/worker.ts";
import type { Course, HelperAt, InHand, OvenState, Progress, Task, TaskId } from "../plan/model.ts";
import type { PortionId } from "../mise/portion.ts";
import type { TimerId } from "./orders.ts";
import type { MealEvent } from "./events.ts";
import type { UsedSwap } from "./used-swap.ts";

export type TimerRun =
  /** `lookAt` is the early end, `endsAt` the late one; `answered` is the last ring that the cook answered. */
  | {
      readonly state: "running";
      readonly startedAt: Instant;
      readonly lookAt: Instant;
      readonly endsAt: Instant;
      readonly answered: "none" | "look" | "end";
    }
  | { readonly state: "paused"; readonly ran: Seconds; readonly lookLeft: Seconds; readonly left: Seconds }
  | { readonly state: "stopped"; readonly at: Instant };

export interface Timer {
  readonly id: TimerId;
  readonly name: string;
  readonly task: TaskId | null;
  readonly dish: DishId | null;
  /** As first set: what a restart goes back to. */
  readonly span: Span;
  readonly ceiling: Seconds | null;
  readonly chime: number;
  readonly run: TimerRun;
}

export type Phase =
  | { readonly state: "cooking" }
  | { readonly state: "held"; readonly since: Instant }
  | { readonly state: "ended"; readonly at: Instant };

/** One evening, folded from its log. Cancelled timers are gone; stopped ones stay for a restart. */
export interface Session {
  readonly meal: CookingMeal;
  readonly tasks: readonly Task[];
  /** How long this cook takes for each kind of work; empty: as the recipes say. */
  readonly paces: readonly Pace[];
  readonly phase: Phase;
  readonly begunAt: Instant;
  readonly serveAt: Instant | null;
  /** How long before serving the cook wants the hands free; null: not at all. */
  readonly lull: Seconds | null;
  readonly progress: ReadonlyMap<TaskId, Progress>;
  /** What the cook was last told to do and has neither finished nor put aside. */
  readonly focus: InHand | null;
  /** Who helps, and what they were told to do. */
  readonly helpers: readonly HelperAt[];
  /** What was handed to a helper; all other work by hand is the cook's. */
  readonly handed: ReadonlyMap<TaskId, Helper>;
  readonly wishes: readonly TaskId[];
  /** The course that was laid last; null: none was, and the planner makes its own. */
  readonly course: Course | null;
  /** Moment key -> when the attention was given. */
  readonly attended: ReadonlyMap<string, Instant>;
  readonly ovens: readonly OvenState[];
  /** Every turn of an oven so far, in order of time; a null heat turned it off. */
  readonly ovenTurns: readonly { readonly oven: string; readonly heat: Heat | null; readonly at: Instant }[];
  readonly timers: ReadonlyMap<TimerId, Timer>;
  /** How many timers there have ever been: gives the next name and chime. */
  readonly timerCount: number;
  readonly swaps: readonly UsedSwap[];
  /** What was prepared beforehand and ticked off. */
  readonly prepared: ReadonlySet<PortionId>;
  /** What was noted on evenings before, and what the cook said to it. */
  readonly offered: readonly OfferedNote[];
  /** What was noted tonight for the next time. */
  readonly noted: readonly Note[];
  readonly lastAt: Instant;
}

/** The log and what it folds to. `session` is null until a meal has begun. */
export interface MealLog {
  readonly events: readonly MealEvent[];
  readonly session: Session | null;
}
