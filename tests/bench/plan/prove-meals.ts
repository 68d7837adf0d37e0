import { writeFileSync } from "node:fs";
import type { Network } from "../../../core/plan/engine/network.ts";
import { search } from "../../../core/plan/engine/search.ts";
import { faultsOf } from "../../scheduling/check-timetable.ts";
import { exactEnd, safeHorizon, type Exact } from "../../scheduling/exact/exact-end.ts";
import { madeUpMeals } from "../../scheduling/made-up-networks.ts";
import { fingerprint, keptOptima, optimaFile, provedEnd } from "../../scheduling/made-up-optima.ts";
import { print } from "../figures.ts";
import { complain } from "./answer.ts";

const limitMs = 300_000;
const how =
  "Proved by tests/scheduling/exact (npm minizinc, the Chuffed solver): npm run bench:plan -- --exact";

/** An end by which there is a timetable: the engine's own, where it has a right one. */
function horizonOf(network: Network): number {
  const began = performance.now();
  const found = search(network, {
    seed: 1,
    schedules: Number.MAX_SAFE_INTEGER,
    isOver: () => performance.now() - began >= 1000,
  });
  const isRight = found.timetable !== null && faultsOf(network, found.timetable).length === 0;
  return isRight ? found.end : safeHorizon(network);
}

function told(name: string, network: Network, exact: Exact, seconds: number): void {
  const end = exact.end === null ? "no end" : `ends at ${exact.end}`;
  print(`${name}: ${network.lengths.length} acts, ${exact.outcome}, ${end}, ${seconds.toFixed(1)} s`);
  if (exact.outcome === "impossible") complain(name, ["it has no timetable, so its generator must change"]);
  if (exact.timetable !== null) complain(name, faultsOf(network, exact.timetable));
}

/**
 * Proves the shortest end of each made-up meal and keeps it in `made-up-optima.json`. What is kept for the same
 * network already is not proved again unless all are asked for.
 */
export async function proveMeals(which: "all" | "missing"): Promise<void> {
  const kept = keptOptima();
  const meals: { name: string; network: string; end: number }[] = [];
  for (const meal of madeUpMeals) {
    const { name, network } = meal;
    let end = which === "all" ? null : provedEnd(kept, meal);
    if (end === null) {
      const began = performance.now();
      const exact = await exactEnd(network, horizonOf(network), limitMs);
      told(name, network, exact, (performance.now() - began) / 1000);
      if (exact.outcome === "optimal") end = exact.end;
    }
    if (end !== null) meals.push({ name, network: fingerprint(network), end });
    writeFileSync(optimaFile, `${JSON.stringify({ how, meals }, null, 2)}\n`);
  }
}
