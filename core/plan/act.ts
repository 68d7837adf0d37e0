import type { Task } from "./model.ts";
import type { Baking, HeatUse } from "./oven.ts";
import type { PoolUse } from "./pools.ts";

/** All times here are whole milliseconds from "now"; lengths are milliseconds. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly atLeast: number;
  /** null: no maximum lag. */
  readonly atMost: number | null;
}

/** One task that is not over yet, as the engine sees it. */
export interface Act {
  readonly task: Task;
  readonly length: number;
  /** When it has the cook's hands, as offsets from its start: all of it, or the first minute. */
  readonly hands: { readonly from: number; readonly to: number };
  /** Burners, appliances and bowls, by index into `Problem.pools`. */
  readonly pools: readonly PoolUse[];
  readonly oven: HeatUse | null;
  /** Which ovens and heats suit it; empty where it needs none, or where none will do. */
  readonly bakings: readonly Baking[];
  /** Not before this, because of what is over (a chill that began at twelve). */
  readonly release: number;
  /** Not after this, because of what is over; null: no such limit. */
  readonly latest: number | null;
  /** Set when it is running: it stays where it is. */
  readonly running: { readonly start: number; readonly end: number } | null;
  /** Offsets from its start at which it wants the cook for a minute. */
  readonly moments: readonly number[];
}
