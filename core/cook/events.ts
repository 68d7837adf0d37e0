import type { Heat } from "../units/temperature.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { CookingMeal, DishId, Span, StepId } from "../recipe/model.ts";
import type { Pace, PaceWish, WorkKind } from "../pace/pace.ts";
import type { Note, NoteAnswer } from "../next-time/note.ts";
import type { Helper } from "../plan/worker.ts";
import type { CourseStep, TaskId } from "../plan/model.ts";
import type { PortionId } from "../mise/portion.ts";
import type { AmountWanted } from "./amount-wanted.ts";
import type { ServingsWanted } from "./servings-wanted.ts";
import type { UsedSwap } from "./used-swap.ts";
import type { TimerId } from "./orders.ts";

/** A step went through a change. `TaskCalled`: the caller has put it before the cook. */
export interface TaskHappening {
  readonly type:
    | "TaskCalled"
    | "TaskStarted"
    | "TaskFinished"
    | "TaskSkipped"
    | "TaskReopened"
    | "TaskChosen"
    | "TaskSetAside";
  readonly task: TaskId;
}

/** Somebody helps the cook. `TaskHanded`: the caller has put a step before a helper. */
export type HelperHappening =
  | { readonly type: "HelperCame" | "HelperLeft"; readonly helper: Helper }
  | { readonly type: "TaskHanded"; readonly task: TaskId; readonly helper: Helper };

export interface TimerStarted {
  readonly type: "TimerStarted";
  readonly timer: TimerId;
  readonly name: string;
  /** Set when a step started it. */
  readonly task: TaskId | null;
  readonly dish: DishId | null;
  readonly span: Span;
  /** The longest it may run in all (the recipe's latest); null: no limit. */
  readonly ceiling: Seconds | null;
  /** Which chime it rings with. */
  readonly chime: number;
}

/** What changes how a timer runs. */
export type TimerTurn =
  | { readonly type: "TimerLengthened" | "TimerShortened"; readonly timer: TimerId; readonly by: Seconds }
  | { readonly type: "RingAnswered"; readonly timer: TimerId; readonly ring: "look" | "end" }
  | {
      readonly type: "TimerPaused" | "TimerResumed" | "TimerRestarted" | "TimerStopped";
      readonly timer: TimerId;
    };

export type TimerHappening =
  | TimerStarted
  | TimerTurn
  | { readonly type: "TimerCancelled"; readonly timer: TimerId }
  | { readonly type: "TimerRenamed"; readonly timer: TimerId; readonly name: string };

/** About how long this cook takes. `PaceKnown` comes with the meal's beginning and holds what the plan is to reckon with. */
export type PaceHappening =
  | { readonly type: "PaceKnown"; readonly paces: readonly Pace[] }
  /** null: as learnt. */
  | { readonly type: "PaceSet"; readonly kind: WorkKind; readonly wish: PaceWish | null }
  | { readonly type: "PaceForgotten" };

/** Where a laid course has a task; see CourseStep. */
export interface LaidStep extends CourseStep {
  readonly task: TaskId;
}

/** About what is to be otherwise the next time. */
export type NoteHappening =
  | { readonly type: "NextTimeNoted"; readonly note: Note }
  /** With the meal's beginning: what was noted on the evenings before for its dishes. */
  | { readonly type: "NotesOffered"; readonly notes: readonly Note[] }
  /** `key` says which note: `noteKey`. */
  | { readonly type: "NoteAnswered"; readonly key: string; readonly answer: NoteAnswer };

/** Something about the meal as a whole. */
export type MealHappening =
  | { readonly type: "AttentionGiven"; readonly task: TaskId; readonly moment: string }
  | { readonly type: "OvenSet"; readonly oven: string; readonly heat: Heat | null }
  | { readonly type: "EverythingHeld" }
  | { readonly type: "WentOn" }
  | { readonly type: "ServingSet"; readonly serveAt: Instant | null }
  /** How long before serving the cook wants the hands free. `LullKept` comes with the meal's beginning: wished before. */
  | { readonly type: "LullKept" | "LullSet"; readonly length: Seconds | null }
  | ({ readonly type: "SwapUsed" } & UsedSwap)
  /** By the cook's order; what the planner chose stands in the meal that was begun. */
  | { readonly type: "WayTaken"; readonly dish: DishId; readonly step: StepId; readonly way: string }
  /** What is to be prepared for a step was ticked off, or opened again. */
  | { readonly type: "PreparingFinished" | "PreparingReopened"; readonly portions: readonly PortionId[] }
  /** More or fewer servings of a dish, before it was begun. */
  | ({ readonly type: "ServingsChanged" } & ServingsWanted)
  /** What the cook used, or wants to use. */
  | ({ readonly type: "AmountChanged" } & AmountWanted)
  /** By the server alone: a longer search has found a better course for the meal. */
  | { readonly type: "CourseLaid"; readonly course: readonly LaidStep[] }
  /** Takes back every event that the command `undoes` produced. */
  | { readonly type: "Undone"; readonly undoes: string }
  | { readonly type: "MealEnded" };

/** What has happened. Stored for ever: a new shape gets a new name. */
export type Happening =
  | { readonly type: "MealBegun"; readonly meal: CookingMeal; readonly serveAt: Instant | null }
  | MealHappening
  | PaceHappening
  | NoteHappening
  | HelperHappening
  | TaskHappening
  | TimerHappening;

/** An event in the meal log. `seq` counts from 1 without gaps; `command` names its cause. */
export interface MealEvent {
  readonly seq: number;
  readonly at: Instant;
  readonly command: string;
  readonly happening: Happening;
}
