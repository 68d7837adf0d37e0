import { inHands } from "./hands.ts";
import type { PlanInput, TaskId } from "./model.ts";
import type { Problem } from "./problem.ts";

/** Whether what is over, or runs, sets this act a last moment. */
function mustFollow(problem: Problem, at: number): boolean {
  const arcs = problem.before[at] ?? [];
  const follows = arcs.some((arc) => arc.atMost !== null && problem.acts[arc.from]?.running !== null);
  return follows || (problem.acts[at]?.latest ?? null) !== null;
}

/** What goes first: what is in hand and the wishes alone, or also all that must follow what is over or runs. */
export type Firsts = "as wished" | "followers too";

/** The acts that go first, each after what it waits for: what is in hand, what must follow, then the wishes. */
export function firstActs(problem: Problem, input: PlanInput, firsts: Firsts): readonly number[] {
  const index = new Map(problem.acts.map((act, at) => [act.task.id, at]));
  const first = new Set<number>();
  const add = (at: number, seen: ReadonlySet<number>): void => {
    if (first.has(at) || seen.has(at) || problem.acts[at]?.running !== null) return;
    (problem.before[at] ?? []).forEach((arc) => add(arc.from, new Set([...seen, at])));
    first.add(at);
  };
  const find = (id: TaskId): readonly number[] => {
    const at = index.get(id);
    return at === undefined ? [] : [at];
  };
  inHands(input)
    .flatMap(find)
    .forEach((at) => add(at, new Set()));
  problem.acts.forEach((_, at) => {
    if (firsts === "followers too" && mustFollow(problem, at)) add(at, new Set());
  });
  input.first.flatMap(find).forEach((at) => add(at, new Set()));
  return [...first];
}
