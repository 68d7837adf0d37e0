import type { CookingMeal, Need } from "../recipe/model.ts";
import type { Task } from "./model.ts";

/** The countable things by name: where each stands in the engine's list, and how many there are. */
export type Pools = ReadonlyMap<string, { readonly index: number; readonly count: number }>;

/** So many of one thing. */
export interface PoolUse {
  readonly pool: number;
  readonly amount: number;
}

/** The kitchen's countable things by name, with what the meal needs and the kitchen does not list. */
export function poolsOf(meal: CookingMeal): Pools {
  const pools = new Map<string, { index: number; count: number }>();
  const add = (name: string, count: number) => {
    const known = pools.get(name);
    pools.set(
      name,
      known === undefined ? { index: pools.size, count } : { ...known, count: known.count + count },
    );
  };
  add("burner", Math.max(1, meal.kitchen.burners));
  meal.kitchen.appliances.forEach((name) => add(`appliance ${name}`, 1));
  const needs = meal.dishes.flatMap((dish) => dish.steps.flatMap((step) => step.needs));
  needs.map(poolName).forEach((name) => {
    if (name !== null && !pools.has(name)) add(name, 1);
  });
  return pools;
}

function poolName(need: Need): string | null {
  switch (need.kind) {
    case "burner":
      return "burner";
    case "appliance":
    case "bowl":
      return `${need.kind} ${need.name}`;
    case "oven":
    case "fridge":
      return null;
  }
}

/** What a task takes of them while it runs. */
export function poolUse(task: Task, pools: Pools): readonly PoolUse[] {
  const amounts = new Map<number, number>();
  for (const need of task.step.needs) {
    const pool = pools.get(poolName(need) ?? "");
    if (pool === undefined) continue;
    const amount = (amounts.get(pool.index) ?? 0) + (need.kind === "burner" ? need.count : 1);
    // More than the kitchen has is said elsewhere; here it means "all there is", so that a plan exists.
    amounts.set(pool.index, Math.min(amount, pool.count));
  }
  return [...amounts].filter(([, amount]) => amount > 0).map(([pool, amount]) => ({ pool, amount }));
}
