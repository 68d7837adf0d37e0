import { bakingAt, type Order } from "./drafts.ts";
import type { Problem } from "./problem.ts";

/**
 * The order with bakings at the heat that a dial is set to: an oven that is on its way to a heat keeps it, for a dial
 * turned to and fro never gets hot.
 * @param who "together": what comes next at one heat moves to the set heat only if all of it can, so that what shares
 * a heat goes on sharing it; "each": as far as it can
 */
export function keptHeat(problem: Problem, { keys, bakings }: Order, who: "together" | "each"): Order {
  const kept = [...bakings];
  problem.ovens.forEach(({ set }, oven) => {
    if (set === null) return;
    const inTurn = problem.acts
      .map((act, index) => ({ act, index, baking: act.bakings[bakings[index] ?? -1] }))
      .filter(({ act, baking }) => act.running === null && baking?.oven === oven)
      .sort((a, b) => (keys[a.index] ?? 0) - (keys[b.index] ?? 0));
    const other = inTurn.findIndex(({ baking }) => baking?.heat !== inTurn[0]?.baking?.heat);
    const next = other < 0 ? inTurn : inTurn.slice(0, other);
    const moved = next.map(({ act, index }) => ({ index, at: bakingAt(act, { oven, heat: set }) }));
    const cannot = moved.findIndex(({ at }) => at < 0);
    const able = cannot < 0 ? moved : who === "together" ? [] : moved.slice(0, cannot);
    for (const { index, at } of able) kept[index] = at;
  });
  return { keys, bakings: kept };
}
