import type { Heat } from "../units/temperature.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { CookingMeal, DishId, IngredientId, Span } from "../recipe/model.ts";
import type { TaskId } from "../plan/model.ts";
import type { TimerId } from "./orders.ts";

/** What has happened. Stored for ever: a new shape gets a new name. */
export type Happening =
  | { readonly type: "MealBegun"; readonly meal: CookingMeal; readonly serveAt: Instant | null }
  | { readonly type: "TaskCalled"; readonly task: TaskId }
  | { readonly type: "TaskStarted"; readonly task: TaskId }
  | { readonly type: "TaskFinished"; readonly task: TaskId }
  | { readonly type: "TaskSkipped"; readonly task: TaskId }
  | { readonly type: "TaskReopened"; readonly task: TaskId }
  | { readonly type: "TaskChosen"; readonly task: TaskId }
  | { readonly type: "TaskSetAside"; readonly task: TaskId }
  | { readonly type: "AttentionGiven"; readonly task: TaskId; readonly moment: string }
  | { readonly type: "OvenSet"; readonly oven: string; readonly heat: Heat | null }
  | { readonly type: "EverythingHeld" }
  | { readonly type: "WentOn" }
  | { readonly type: "ServingSet"; readonly serveAt: Instant | null }
  | { readonly type: "SwapUsed"; readonly dish: DishId; readonly ingredient: IngredientId; readonly swap: number }
  | {
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
  | { readonly type: "TimerLengthened"; readonly timer: TimerId; readonly by: Seconds }
  | { readonly type: "TimerShortened"; readonly timer: TimerId; readonly by: Seconds }
  | { readonly type: "TimerPaused"; readonly timer: TimerId }
  | { readonly type: "TimerResumed"; readonly timer: TimerId }
  | { readonly type: "TimerRestarted"; readonly timer: TimerId }
  | { readonly type: "TimerStopped"; readonly timer: TimerId }
  | { readonly type: "TimerCancelled"; readonly timer: TimerId }
  | { readonly type: "TimerRenamed"; readonly timer: TimerId; readonly name: string }
  | { readonly type: "RingAnswered"; readonly timer: TimerId; readonly ring: "look" | "end" }
  /** Takes back every event that the command `undoes` produced. */
  | { readonly type: "Undone"; readonly undoes: string }
  | { readonly type: "MealEnded" };

/** An event in the meal log. `seq` counts from 1 without gaps; `command` names its cause. */
export interface MealEvent {
  readonly seq: number;
  readonly at: Instant;
  readonly command: string;
  readonly happening: Happening;
}
