import type { Heat } from "../units/temperature.ts";
import { toFahrenheit } from "../units/temperature.ts";
import type { Oven, Step } from "../recipe/model.ts";
import type { PlanInput } from "./model.ts";

/** What an oven task asks for; heat in degrees Fahrenheit. */
export interface HeatUse {
  readonly low: number;
  readonly high: number;
  readonly racks: number;
}

/** One oven as the engine sees it; degrees Fahrenheit, rates in degrees a minute. */
export interface OvenFacts {
  readonly name: string;
  readonly racks: number;
  readonly heats: number;
  readonly cools: number;
  readonly hottest: number;
  /** What it is set to; null: off. */
  readonly set: number | null;
  /** How hot it is by now, as far as one can know; null: does not matter (time runs backwards). */
  readonly temperature: number | null;
}

/** Where and how hot an oven task bakes. */
export interface Baking {
  readonly oven: number;
  readonly heat: number;
}

/** A cold oven: the temperature of the room. Common practice, no source. */
const COLD_F = 70;
/** A rate of nought would heat for ever; the recipe reader refuses it, and a plan must come all the same. */
const SLOWEST = 1;

/** The oven that a step asks for; several oven needs of one step become one that suits all. */
export function heatOf(step: Step): HeatUse | null {
  const uses = step.needs.flatMap((need) =>
    need.kind === "oven"
      ? [{ low: toFahrenheit(need.heat.low), high: toFahrenheit(need.heat.high), racks: need.racks }]
      : [],
  );
  const [first, ...more] = uses;
  if (first === undefined) return null;
  return more.reduce<HeatUse>((all, use) => {
    const low = Math.max(all.low, use.low);
    return { low, high: Math.max(low, Math.min(all.high, use.high)), racks: all.racks + use.racks };
  }, first);
}

/** What has baked: until when (an instant), and at what. */
interface Baked {
  readonly until: number;
  readonly use: HeatUse;
}

/** The oven tasks that are over, the latest last. Which oven it was is not known; it was hot, so it counts. */
function bakedSoFar(input: PlanInput): readonly Baked[] {
  const baked = input.tasks.flatMap((task): readonly Baked[] => {
    const use = heatOf(task.step);
    const progress = input.progress.get(task.id);
    return use === null || progress?.state !== "done" ? [] : [{ until: progress.at, use }];
  });
  return baked.sort((a, b) => a.until - b.until);
}

/**
 * How hot an oven is by now, as far as one can know: what baked last before the dial was turned tells the heat
 * it started from, else it was cold; from there it has come towards what it is set to at its own rate.
 */
function temperatureNow(
  oven: Oven,
  set: number,
  setAt: number,
  now: number,
  baked: readonly Baked[],
): number {
  const last = baked.at(-1);
  if (last !== undefined && last.until > setAt) return set;
  const { low, high } = last?.use ?? { low: COLD_F, high: COLD_F };
  const [heats, cools] = [Math.max(SLOWEST, oven.heats), Math.max(SLOWEST, oven.cools)];
  const minutes = Math.max(0, (now - setAt) / 60_000);
  // It baked somewhere between the two; the end from which the way is longer is the safe one to assume.
  const warms = (set - low) / heats >= (high - set) / cools;
  return warms ? Math.min(set, low + heats * minutes) : Math.max(set, high - cools * minutes);
}

/** The meal's ovens as they are now. `running` are the uses of what bakes already. */
export function ovensOf(input: PlanInput, running: readonly HeatUse[]): readonly OvenFacts[] {
  const baked = bakedSoFar(input);
  return input.meal.kitchen.ovens.map((oven): OvenFacts => {
    const state = input.ovens.find((one) => one.oven === oven.name);
    const set = state?.heat === undefined || state.heat === null ? null : toFahrenheit(state.heat);
    const setAt = state?.setAt ?? input.now;
    const warmed = set === null ? COLD_F : temperatureNow(oven, set, setAt, input.now, baked);
    // Something bakes in it, so it was hot enough, whatever it was set to and when.
    const hot = running.length === 0 ? warmed : (set ?? Math.min(...running.map((use) => use.low)));
    return {
      name: oven.name,
      racks: Math.max(1, oven.racks),
      heats: Math.max(SLOWEST, oven.heats),
      cools: Math.max(SLOWEST, oven.cools),
      hottest: toFahrenheit(oven.hottest),
      set,
      temperature: hot,
    };
  });
}

/** How long the oven takes from one heat to another, in milliseconds. */
export function changeOver(oven: OvenFacts, from: number, to: number): number {
  // As the engine counts, to the millisecond.
  return Math.ceil(to >= from ? (to - from) / (oven.heats / 60_000) : (from - to) / (oven.cools / 60_000));
}

/** How many of the tasks could bake at this heat. */
function sharing(heat: number, all: readonly HeatUse[]): number {
  return all.filter((use) => heat >= use.low && heat <= use.high).length;
}

/**
 * The ovens and heats worth trying for a task: every end point of every range, low and high, that lies in its
 * own, and what the ovens are set to; the most widely shared first, then the lowest. Empty: no oven will do.
 */
export function bakingsOf(
  use: HeatUse,
  all: readonly HeatUse[],
  ovens: readonly OvenFacts[],
): readonly Baking[] {
  const ends = [...all.flatMap((one) => [one.low, one.high]), ...ovens.flatMap((oven) => oven.set ?? [])];
  const inside = [...new Set([use.low, use.high, ...ends])].filter(
    (heat) => heat >= use.low && heat <= use.high,
  );
  const heats = inside.map((heat) => ({ heat, sharedBy: sharing(heat, all) }));
  heats.sort((a, b) => b.sharedBy - a.sharedBy || a.heat - b.heat);
  return ovens.flatMap((one, oven) =>
    one.hottest < use.low || one.racks < use.racks
      ? []
      : heats.filter(({ heat }) => heat <= one.hottest).map(({ heat }) => ({ oven, heat })),
  );
}

/** The same heat as the recipes write it: in the scale of a range that ends there. */
export function writtenHeat(heat: number, steps: readonly Step[]): Heat {
  for (const step of steps) {
    for (const need of step.needs) {
      if (need.kind !== "oven") continue;
      const found = [need.heat.low, need.heat.high].find((end) => toFahrenheit(end) === heat);
      if (found !== undefined) return found;
    }
  }
  return { degrees: heat, scale: "F" };
}
