import type { Instant, Seconds } from "../units/quantity.ts";
import type { Heat } from "../units/temperature.ts";
import type { TaskId } from "./model.ts";

/** Why a task starts no sooner than `from`, if all else on the sheet stays where it is. */
export type Bound =
  /** Another task comes first, and then a rest (none: 0 s). */
  | { readonly kind: "after"; readonly from: Instant; readonly task: TaskId; readonly rest: Seconds }
  /** The cook is at another task. */
  | { readonly kind: "hands"; readonly from: Instant; readonly task: TaskId }
  /** A burner, an appliance or a bowl is taken. */
  | { readonly kind: "thing"; readonly from: Instant; readonly task: TaskId; readonly thing: string }
  /** The oven is full. */
  | { readonly kind: "rack"; readonly from: Instant; readonly task: TaskId; readonly oven: string }
  /** The oven is on its way to this task's heat; `task`: after that one came out, which wanted another. */
  | {
      readonly kind: "heat";
      readonly from: Instant;
      readonly task: TaskId | null;
      readonly oven: string;
      readonly heat: Heat;
    }
  /** Another must follow it at most `within` later, and comes no sooner itself. */
  | { readonly kind: "soon"; readonly from: Instant; readonly task: TaskId; readonly within: Seconds }
  /** Its hot result would wait longer than it keeps, for that task or (null) for the table. */
  | { readonly kind: "hot"; readonly from: Instant; readonly task: TaskId | null; readonly keeps: Seconds }
  /** It must end close to serving. */
  | { readonly kind: "fresh"; readonly from: Instant; readonly within: Seconds }
  /** What is made ahead would no longer be good at the table. */
  | { readonly kind: "ahead"; readonly from: Instant; readonly keeps: Seconds }
  /** The cook asked for it; it begins now. */
  | { readonly kind: "wish"; readonly from: Instant }
  /** Nothing: it begins now. */
  | { readonly kind: "now"; readonly from: Instant };
