import { planInputOf } from "../../../core/cook/run-sheet.ts";
import { criticalChain } from "../../../core/plan/critical-chain.ts";
import type { RunSheet, TaskId } from "../../../core/plan/model.ts";
import { eveningLayout } from "./evening-layout.ts";
import type { Evening, Extent } from "./evening-layout.ts";
import type { EveningProps } from "./evening-props.ts";
import { heatCurve } from "./heat-curve.ts";
import type { HeatCurve } from "./heat-curve.ts";

/** The evening with the heat of its ovens, as all of its pictures are drawn from it. */
export interface DrawnEvening {
  readonly evening: Evening;
  readonly heats: ReadonlyMap<string, HeatCurve>;
}

type Known = Pick<EveningProps, "session" | "sheet" | "now">;

/** A sheet has one chain; while the sheet stays the chain does. */
const chains = new WeakMap<RunSheet, readonly TaskId[]>();

/** Those that dinner waits for, worked out once for each run sheet. */
export function chainOf({ session, sheet, now }: Known): readonly TaskId[] {
  const known = chains.get(sheet) ?? criticalChain(planInputOf(session, now), sheet);
  chains.set(sheet, known);
  return known;
}

/** Lays an evening out with its heats. */
export function drawnEvening(
  { session, sheet, now }: Known,
  chain: readonly TaskId[],
  extent: Extent,
): DrawnEvening {
  const evening = eveningLayout(session, sheet, now, chain, extent);
  const heats = session.meal.kitchen.ovens.map(
    (oven) => [oven.name, heatCurve(oven, session, sheet, evening.from, evening.to)] as const,
  );
  return { evening, heats: new Map(heats) };
}
