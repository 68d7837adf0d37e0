import { between, minutes } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { Bound } from "./bound.ts";
import { boundsOf, lookAt } from "./bounds.ts";
import type { Row } from "./bounds.ts";
import type { PlanInput, RunSheet, TaskId } from "./model.ts";

/** What decides when a task starts. */
export type Binding =
  | Bound
  /** It is going already. */
  | { readonly kind: "begun"; readonly from: Instant }
  /** It could begin at `from`, which is `room` sooner, where `next` would stop it; and `slack` later. */
  | {
      readonly kind: "free";
      readonly from: Instant;
      readonly room: Seconds;
      readonly slack: Seconds;
      readonly next: Bound;
    };

/** A shorter wait is none: nobody starts a pot for half a minute. */
const least = minutes(1);

/** The latest of the bounds that its start does not break; of those at the same second the first told. */
function lastOf(bounds: readonly Bound[], start: Instant): Bound | null {
  const kept = bounds.filter(({ from }) => between(start, from) < 1);
  return kept.reduce<Bound | null>(
    (last, bound) => (last === null || between(last.from, bound.from) >= 1 ? bound : last),
    null,
  );
}

function bindingOf(row: Row, bounds: readonly Bound[], input: PlanInput): Binding {
  const { start, slack } = row.entry;
  if (input.progress.get(row.task.id)?.state === "running") return { kind: "begun", from: start };
  const last = lastOf(bounds, start);
  if (last === null) return { kind: "now", from: start };
  const room = between(last.from, start);
  return room < least ? last : { kind: "free", from: last.from, room, slack, next: last };
}

/** The other task that a binding names; null where it is none. */
export const boundBy = (binding: Binding): TaskId | null => ("task" in binding ? binding.task : null);

/**
 * What binds the start of each entry that is not over, read off the sheet alone. Two tasks that wait for each other
 * (one must follow soon, the other comes first) are told by what keeps the later one besides, where there is such.
 */
export function bindingsOf(input: PlanInput, sheet: RunSheet): ReadonlyMap<TaskId, Binding> {
  const look = lookAt(input, sheet);
  const bounds = new Map(look.rows.map((row) => [row.task.id, boundsOf(look, row)]));
  const first = new Map(
    look.rows.map((row) => [row.task.id, bindingOf(row, bounds.get(row.task.id) ?? [], input)]),
  );
  const waitsFor = (before: TaskId, id: TaskId): boolean => {
    const binding = first.get(before);
    return binding?.kind === "soon" && binding.task === id;
  };
  return new Map(
    look.rows.map((row) => {
      const { id } = row.task;
      const binding = first.get(id) ?? { kind: "now", from: row.entry.start };
      if (binding.kind !== "after" || !waitsFor(binding.task, id)) return [id, binding];
      const others = (bounds.get(id) ?? []).filter(
        (bound) => bound.kind !== "now" && !(boundBy(bound) !== null && waitsFor(boundBy(bound) ?? id, id)),
      );
      const other = bindingOf(row, others, input);
      return [id, other.kind === "free" || other.kind === "now" ? binding : other];
    }),
  );
}

/**
 * The tasks that make dinner as late as it is, in order of time: from the one that ends last back through what binds
 * each, to one that is going already, that begins now, or that waits for nothing but the table.
 */
export function criticalChain(input: PlanInput, sheet: RunSheet): readonly TaskId[] {
  const bindings = bindingsOf(input, sheet);
  const open = sheet.entries.filter(({ task }) => bindings.has(task));
  const end = open.reduce((last, entry) => Math.max(last, entry.end), -Infinity);
  const lasts = open.filter((entry) => entry.end === end);
  const last = lasts.find(({ task }) => bindings.get(task)?.kind !== "free") ?? lasts[0];
  const chain = new Set<TaskId>();
  let at = last?.task ?? null;
  while (at !== null && !chain.has(at) && bindings.has(at)) {
    chain.add(at);
    const binding = bindings.get(at);
    at = binding === undefined ? null : boundBy(binding);
  }
  return open.filter(({ task }) => chain.has(task)).map(({ task }) => task);
}
