import type { Heat } from "../units/temperature.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { Worker } from "../plan/worker.ts";
import type { Moment, Task } from "../plan/model.ts";
import type { Timer } from "./session.ts";

/** What wants the cook at this moment; the first of the list is "what now". */
export type Call =
  | {
      readonly kind: "ring";
      readonly timer: Timer;
      readonly ring: "look" | "end";
      readonly since: Instant;
      readonly round: number;
    }
  | { readonly kind: "attend"; readonly task: Task; readonly moment: Moment }
  | {
      readonly kind: "heat";
      readonly oven: string;
      readonly heat: Heat;
      readonly for: readonly Task[];
      readonly at: Instant;
    }
  /** A hands-off step has reached its end: take it off, look at it, finish it. */
  | { readonly kind: "take-off"; readonly task: Task; readonly since: Instant }
  /** A hands-off step to set going. */
  | { readonly kind: "put-on"; readonly task: Task; readonly since: Instant; readonly by: Worker }
  /** A hands-on step to do. */
  | { readonly kind: "do"; readonly task: Task; readonly since: Instant; readonly by: Worker }
  | { readonly kind: "wait"; readonly until: Instant; readonly next: Task | null }
  | { readonly kind: "serve"; readonly since: Instant }
  | { readonly kind: "held"; readonly since: Instant }
  | { readonly kind: "ended"; readonly at: Instant };

/**
 * Something the caller says unasked. It is said once when `dueAt` has come, once more when
 * `againAfter` has passed since then and nothing happened, and then left to the screen; a ring
 * goes on by itself. `core/cook/said-cues.ts` keeps count.
 */
export interface Cue {
  readonly key: string;
  readonly call: Call;
  readonly dueAt: Instant;
  /** null: said once only. */
  readonly againAfter: Seconds | null;
  /** What to say, in one breath. */
  readonly say: string;
}
