import type { Network, Timetable } from "../../../core/plan/engine/network.ts";
import { bakingOf, exactModel, finish, startOf, tendedOf } from "./exact-model.ts";
import { solve } from "./minizinc.ts";

/** What the exact reference says of a network. */
export interface Exact {
  readonly outcome: "optimal" | "impossible" | "unfinished";
  /** The shortest end; of what is unfinished the best so far; null where none is known. */
  readonly end: number | null;
  /** One that ends then. */
  readonly timetable: Timetable | null;
}

function timetableOf(network: Network, values: Readonly<Record<string, number>>): Timetable {
  const value = (name: string): number => {
    const found = values[name];
    if (found === undefined) throw new Error(`the solution does not tell ${name}`);
    return found;
  };
  return {
    starts: network.lengths.map((_, act) => value(startOf(act))),
    bakings: network.bakings.map((choices, act) => (choices.length === 0 ? 0 : value(bakingOf(act)))),
    tended: network.tending.map((wishes, act) => wishes.map((_, which) => value(tendedOf(act, which)))),
  };
}

/**
 * The shortest end of a network, proved: by a constraint solver, from a model that knows no engine. For tests and
 * benches only; a meal takes seconds.
 * @param horizon nothing later is looked for ("impossible" means: not by then): an end known to be possible,
 * for instance the engine's own, makes it fast
 * @param limitMs wall clock; about two seconds go by before it begins to search
 */
export async function exactEnd(network: Network, horizon: number, limitMs: number): Promise<Exact> {
  const model = exactModel(network, horizon);
  if (model === null) return { outcome: "impossible", end: null, timetable: null };
  const { status, values } = await solve(model, limitMs);
  if (values === null) return { outcome: status, end: null, timetable: null };
  return { outcome: status, end: values[finish] ?? null, timetable: timetableOf(network, values) };
}

/**
 * An end by which there is a timetable if there is one at all, unless things are only free at certain times: one
 * act after the other, each with its longest lag or change of heat before it.
 */
export function safeHorizon(network: Network): number {
  const lags = network.lengths.map((length, act) =>
    network.lags.reduce((most, lag) => (lag.from === act ? Math.max(most, lag.least) : most), length),
  );
  const heats = network.bakings.flatMap((choices) => choices.map((baking) => baking.heat));
  const temperatures = network.ovens.flatMap((oven) => oven.temperature ?? []);
  const widest = Math.max(0, ...heats, ...temperatures) - Math.min(...heats, ...temperatures, 1000);
  const rates = network.ovens.flatMap((oven) => [oven.heats, oven.cools]);
  const change = rates.length === 0 ? 0 : Math.max(0, Math.ceil(widest / Math.min(...rates)));
  const baked = network.bakings.filter((choices) => choices.length > 0).length;
  const first = Math.max(0, ...network.earliest);
  return lags.reduce((sum, most) => sum + most, first) + change * baked;
}
