import type { CookingMeal } from "../recipe/model.ts";
import type { PlanInput, Task } from "./model.ts";
import { workersOf } from "./who.ts";
import type { Worker } from "./worker.ts";

/** A task with its times, in any unit, and the oven it was given. */
export interface Laid {
  readonly task: Task;
  readonly start: number;
  readonly end: number;
  readonly oven: string | null;
}

function freeBurners(
  taken: readonly { readonly burner: number; readonly until: number }[],
  at: number,
  count: number,
) {
  const free: number[] = [];
  for (let burner = 1; free.length < count; burner += 1) {
    if (taken.every((one) => one.burner !== burner || one.until <= at)) free.push(burner);
  }
  return free;
}

/** What one task occupies besides burners, as named on the picture over time. */
function otherLanes(laid: Laid, worker: Worker | null, meal: CookingMeal): readonly string[] {
  const hands = worker === null ? [] : [worker];
  const places = laid.task.step.needs.flatMap((need): readonly string[] => {
    switch (need.kind) {
      case "oven":
        return [laid.oven ?? meal.kitchen.ovens[0]?.name ?? "oven"];
      case "appliance":
        return [need.name];
      case "fridge":
        return ["fridge"];
      case "burner":
      case "bowl":
        return [];
    }
  });
  return [...hands, ...new Set(places)];
}

/**
 * The lanes of each task, in the order given, which is that of their starts: the lowest burner that is free
 * when it starts, so a pot that is on the stove never seems to change its place when the plan does.
 */
export function lanesOf(laid: readonly Laid[], input: PlanInput): readonly (readonly string[])[] {
  const { meal } = input;
  const workers = workersOf(laid, input);
  const taken: { readonly burner: number; readonly until: number }[] = [];
  return laid.map((one, index) => {
    const count = one.task.step.needs.reduce(
      (sum, need) => (need.kind === "burner" ? sum + need.count : sum),
      0,
    );
    const burners = freeBurners(taken, one.start, Math.min(count, Math.max(1, meal.kitchen.burners)));
    taken.push(...burners.map((burner) => ({ burner, until: one.end })));
    const lanes = [
      ...otherLanes(one, workers[index] ?? null, meal),
      ...burners.map((burner) => `burner ${burner}`),
    ];
    return lanes.length === 0 ? ["counter"] : lanes;
  });
}
