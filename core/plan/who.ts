import type { PlanInput, Task } from "./model.ts";
import type { Worker } from "./worker.ts";

/** Work with its times, in any unit. */
interface Work {
  readonly task: Task;
  readonly start: number;
  readonly end: number;
}

/** Who has begun it; null where nobody has. */
function begunBy({ id }: Task, { focus, helpers, handed, progress }: PlanInput): Worker | null {
  const state = progress.get(id)?.state ?? "waiting";
  const isInHand = focus === id || helpers.some(({ inHand }) => inHand?.task === id);
  return state === "waiting" && !isInHand ? null : (handed.get(id) ?? "cook");
}

/**
 * Who does each piece, in the order given, which is that of their starts; null for what asks for nobody all the while.
 * What is to come falls to whoever is free, the cook before the helpers: so the caller will call it, too.
 */
export function workersOf(works: readonly Work[], input: PlanInput): readonly (Worker | null)[] {
  const begun = works.map(({ task }) => begunBy(task, input));
  const until = new Map<Worker, number>();
  works.forEach(({ task, end }, index) => {
    const by = begun[index] ?? null;
    if (by !== null && task.step.hands === "on") until.set(by, Math.max(until.get(by) ?? -Infinity, end));
  });
  const there: readonly Worker[] = ["cook", ...input.helpers.map(({ helper }) => helper)];
  return works.map(({ task, start, end }, index) => {
    if (task.step.hands === "off") return null;
    const by = begun[index] ?? there.find((one) => (until.get(one) ?? -Infinity) <= start) ?? "cook";
    if (begun[index] === null) until.set(by, end);
    return by;
  });
}
