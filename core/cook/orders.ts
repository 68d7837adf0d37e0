import type { Heat } from "../units/temperature.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { CookingMeal, DishId, Span, StepId } from "../recipe/model.ts";
import type { Pace, PaceWish, WorkKind } from "../pace/pace.ts";
import type { Note, NoteAnswer } from "../next-time/note.ts";
import type { Helper } from "../plan/worker.ts";
import type { PortionId } from "../mise/portion.ts";
import type { TaskId } from "../plan/model.ts";
import type { AmountWanted } from "./amount-wanted.ts";
import type { ServingsWanted } from "./servings-wanted.ts";
import type { UsedSwap } from "./used-swap.ts";

declare const timer: unique symbol;
export type TimerId = string & { readonly [timer]: true };
export const timerId = (text: string): TimerId => text as TimerId;

/** About one step. */
export type TaskOrder =
  | {
      readonly type: "StartTask" | "FinishTask" | "SkipTask" | "ReopenTask" | "ChooseTask";
      readonly task: TaskId;
    }
  | { readonly type: "GiveAttention"; readonly task: TaskId; readonly moment: string };

/** A timer of the cook's own; `name` null: the caller names it ("timer 2"). */
export interface StartTimer {
  readonly type: "StartTimer";
  readonly timer: TimerId;
  readonly name: string | null;
  readonly span: Span;
  readonly dish: DishId | null;
}

/** About a timer that is there. */
export type ChangeTimer =
  | { readonly type: "LengthenTimer" | "ShortenTimer"; readonly timer: TimerId; readonly by: Seconds }
  | { readonly type: "RenameTimer"; readonly timer: TimerId; readonly name: string }
  | {
      readonly type:
        "PauseTimer" | "ResumeTimer" | "RestartTimer" | "StopTimer" | "CancelTimer" | "AnswerRing";
      readonly timer: TimerId;
    };

/** About those who help. */
export type HelperOrder =
  | { readonly type: "WelcomeHelper" | "ReleaseHelper"; readonly helper: Helper }
  /** "Give the onions to the helper." */
  | { readonly type: "HandTask"; readonly task: TaskId; readonly helper: Helper };

/** About the meal as a whole. */
export type MealOrder =
  | { readonly type: "SetOven"; readonly oven: string; readonly heat: Heat | null }
  | { readonly type: "HoldEverything" }
  | { readonly type: "GoOn" }
  | { readonly type: "SetServing"; readonly serveAt: Instant | null }
  | { readonly type: "SetLull"; readonly length: Seconds | null }
  | ({ readonly type: "UseSwap" } & UsedSwap)
  | { readonly type: "SetPace"; readonly kind: WorkKind; readonly wish: PaceWish | null }
  | { readonly type: "ForgetPace" }
  /** Go without a dish: all of it that has not ended is left out. */
  | { readonly type: "LeaveOutDish"; readonly dish: DishId }
  /** Do a step in another of its ways. */
  | { readonly type: "TakeWay"; readonly dish: DishId; readonly step: StepId; readonly way: string }
  /** Make another number of servings of a dish. */
  | ({ readonly type: "ChangeServings" } & ServingsWanted)
  | { readonly type: "CancelAllTimers" }
  | { readonly type: "EndMeal" }
  /** Ticks off what is to be prepared for steps, or opens it again. */
  | { readonly type: "FinishPreparing" | "ReopenPreparing"; readonly portions: readonly PortionId[] }
  /** Take, or have taken, another amount. */
  | ({ readonly type: "ChangeAmount" } & AmountWanted);

/** About what is to be otherwise the next time. */
export type NoteOrder =
  | { readonly type: "NoteNextTime"; readonly note: Note }
  | { readonly type: "AnswerNote"; readonly key: string; readonly answer: NoteAnswer };

/** Only the server gives it: it knows the recipes and the evenings before. */
interface BeginMeal {
  readonly type: "BeginMeal";
  readonly meal: CookingMeal;
  readonly serveAt: Instant | null;
  /** How long this cook takes; left out where nothing is known, and then the recipes' times hold. */
  readonly paces?: readonly Pace[];
  /** Who helps from the start; left out: the cook is alone. */
  readonly helpers?: readonly Helper[];
  /** How long before serving the cook wants the hands free, as wished on an evening before; left out: not at all. */
  readonly lull?: Seconds;
  /** What is taken for what, chosen beforehand; left out: all is as written. */
  readonly swaps?: readonly UsedSwap[];
  /** What was noted for its dishes on evenings before; left out: nothing. */
  readonly notes?: readonly Note[];
  /** What the cook has said to them already. */
  readonly noteAnswers?: readonly { readonly key: string; readonly answer: NoteAnswer }[];
}

/** What the cook (or the clock: `Tick`) wants to happen. */
export type Order =
  | BeginMeal
  | { readonly type: "Tick" }
  | { readonly type: "UndoLast" }
  | MealOrder
  | NoteOrder
  | HelperOrder
  | TaskOrder
  | StartTimer
  | ChangeTimer;

/** An order with the moment and the id that the shell gave it. A repeated id is carried out once. */
export interface Command {
  readonly id: string;
  readonly at: Instant;
  readonly order: Order;
}
