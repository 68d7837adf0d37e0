import type { Heat } from "../units/temperature.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { CookingMeal, DishId, IngredientId, Span } from "../recipe/model.ts";
import type { TaskId } from "../plan/model.ts";

declare const timer: unique symbol;
export type TimerId = string & { readonly [timer]: true };
export const timerId = (text: string): TimerId => text as TimerId;

/** What the cook (or the clock: `Tick`) wants to happen. */
export type Order =
  | { readonly type: "BeginMeal"; readonly meal: CookingMeal; readonly serveAt: Instant | null }
  | { readonly type: "Tick" }
  | { readonly type: "StartTask"; readonly task: TaskId }
  | { readonly type: "FinishTask"; readonly task: TaskId }
  | { readonly type: "SkipTask"; readonly task: TaskId }
  | { readonly type: "ReopenTask"; readonly task: TaskId }
  | { readonly type: "ChooseTask"; readonly task: TaskId }
  | { readonly type: "GiveAttention"; readonly task: TaskId; readonly moment: string }
  | { readonly type: "SetOven"; readonly oven: string; readonly heat: Heat | null }
  | { readonly type: "HoldEverything" }
  | { readonly type: "GoOn" }
  | { readonly type: "SetServing"; readonly serveAt: Instant | null }
  | { readonly type: "UseSwap"; readonly dish: DishId; readonly ingredient: IngredientId; readonly swap: number }
  | {
      readonly type: "StartTimer";
      readonly timer: TimerId;
      /** null: the caller names it ("timer two"). */
      readonly name: string | null;
      readonly span: Span;
      readonly dish: DishId | null;
    }
  | { readonly type: "LengthenTimer"; readonly timer: TimerId; readonly by: Seconds }
  | { readonly type: "ShortenTimer"; readonly timer: TimerId; readonly by: Seconds }
  | { readonly type: "PauseTimer"; readonly timer: TimerId }
  | { readonly type: "ResumeTimer"; readonly timer: TimerId }
  | { readonly type: "RestartTimer"; readonly timer: TimerId }
  | { readonly type: "StopTimer"; readonly timer: TimerId }
  | { readonly type: "CancelTimer"; readonly timer: TimerId }
  | { readonly type: "CancelAllTimers" }
  | { readonly type: "RenameTimer"; readonly timer: TimerId; readonly name: string }
  | { readonly type: "AnswerRing"; readonly timer: TimerId }
  | { readonly type: "UndoLast" }
  | { readonly type: "EndMeal" };

/** An order with the moment and the id that the shell gave it. A repeated id is carried out once. */
export interface Command {
  readonly id: string;
  readonly at: Instant;
  readonly order: Order;
}
