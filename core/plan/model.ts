import type { Heat } from "../units/temperature.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { Helper } from "./worker.ts";
import type { Attention, CookingMeal, Dish, Span, Step } from "../recipe/model.ts";

declare const task: unique symbol;
/** `dish/step`, or `dish/step#2` for the second batch. */
export type TaskId = string & { readonly [task]: true };
export const taskId = (text: string): TaskId => text as TaskId;

/** "That task's end plus `atLeast` <= this one's start <= that task's end plus `atMost`." */
export interface TaskLink {
  readonly task: TaskId;
  readonly atLeast: Seconds;
  readonly atMost: Seconds | null;
}

/** One thing to schedule: a step of a dish, or one batch of it. */
export interface Task {
  readonly id: TaskId;
  readonly dish: Dish;
  readonly step: Step;
  /** `number` counts from 1; null where the step is done all at once. */
  readonly batch: { readonly number: number; readonly count: number; readonly pieces: number } | null;
  readonly after: readonly TaskLink[];
  /** How much longer than its recipe says this cook takes for it; 1 for what goes on by itself. */
  readonly pace: number;
}

/** One attention moment of one task, for instance the third stir. `key` is unique in the meal. */
export interface Moment {
  readonly key: string;
  readonly task: TaskId;
  readonly do: string;
  readonly at: Instant;
  readonly within: Seconds;
  readonly kind: Attention["kind"];
}

/** What has become of a task so far. */
export type Progress =
  | { readonly state: "waiting" }
  | { readonly state: "running"; readonly startedAt: Instant; readonly span: Span }
  | { readonly state: "done"; readonly startedAt: Instant | null; readonly at: Instant }
  | { readonly state: "skipped"; readonly at: Instant };

/** A step that someone was told to do and has neither finished nor put aside. */
export interface InHand {
  readonly task: TaskId;
  readonly calledAt: Instant;
}

/** A helper who is there. */
export interface HelperAt {
  readonly helper: Helper;
  readonly inHand: InHand | null;
}

export interface OvenState {
  readonly oven: string;
  /** What the cook has set it to; null: off. */
  readonly heat: Heat | null;
  readonly setAt: Instant | null;
}

/** Where a course puts a task: so many milliseconds after the cooking begins; null: it bakes nowhere. */
export interface CourseStep {
  readonly start: number;
  readonly baking: { readonly oven: string; readonly heat: number } | null;
}

/**
 * How the whole meal goes best when nothing comes between. Every plan starts from it, so that the cook's order of work
 * does not flap from one event to the next.
 */
export type Course = ReadonlyMap<TaskId, CourseStep>;

export interface PlanInput {
  readonly meal: CookingMeal;
  readonly tasks: readonly Task[];
  readonly progress: ReadonlyMap<TaskId, Progress>;
  readonly ovens: readonly OvenState[];
  readonly now: Instant;
  /** When something last happened, at the latest now: the order of work is looked over then and holds until something happens again. */
  readonly since: Instant;
  /** When the cook wants to eat; null: as soon as possible. */
  readonly serveAt: Instant | null;
  /** How long before serving the cook wants the hands free, where the recipes allow it; null: not at all. */
  readonly lull: Seconds | null;
  /** The cook's own wishes, the latest first: these start as soon as they can. */
  readonly first: readonly TaskId[];
  /** The task the cook is at: it stays first. Hands-on, it is `running` in `progress` since it was called. */
  readonly focus: TaskId | null;
  /** Who helps the cook; what they have in hand stays first, as with the cook. */
  readonly helpers: readonly HelperAt[];
  /** What a helper does or did; all else that was done by hand was the cook's. */
  readonly handed: ReadonlyMap<TaskId, Helper>;
  /** The course that a longer search has found; left out, the planner makes its own. */
  readonly course?: Course;
}

export interface Entry {
  readonly task: TaskId;
  readonly start: Instant;
  /** The earliest end; equals `end` where the recipe names one figure. */
  readonly look: Instant;
  /** The planned end, the middle of the range: followers count from it. The latest end is the timer's affair. */
  readonly end: Instant;
  /** "burner 2", "oven", "cook", "helper", "blender": the lanes of the picture over time. */
  readonly lanes: readonly string[];
  readonly moments: readonly Moment[];
  /** How much later it could start without making dinner later. */
  readonly slack: Seconds;
}

/** Turn the oven to `heat` at `at`, so that it is hot at `readyAt` for `for`. */
export interface OvenMove {
  readonly oven: string;
  readonly heat: Heat;
  readonly at: Instant;
  readonly readyAt: Instant;
  readonly for: readonly TaskId[];
}

/** The time-ordered list of who does what when. Pure: the same input gives the same sheet. */
export interface RunSheet {
  /** In order of start: tasks that are done, running, and to come (skipped ones are absent). */
  readonly entries: readonly Entry[];
  readonly ovenMoves: readonly OvenMove[];
  /** When everything can be on the table. */
  readonly readyAt: Instant;
  /** How much later than asked; 0 when in time or when nothing was asked. */
  readonly late: Seconds;
  /** Each limit that this sheet breaks, as one spoken sentence. */
  readonly broken: readonly string[];
}

/** The seam between the meal and the scheduling engine. Never throws, always returns a sheet. */
export type Planner = (input: PlanInput) => RunSheet;
