import type { Baking, Lag, Network, OvenFacts, Tending, Use } from "../../core/plan/engine/network.ts";

/** The things of a made-up kitchen, by index. */
export const cook = 0;
/** Attention: whoever holds it cannot be called away. Mise en place needs the cook, but not this. */
export const care = 1;
export const burner = 2;
export const mixer = 3;
export const blender = 4;

export interface Kitchen {
  readonly cooks: number;
  readonly burners: number;
  /** All at 70 degrees at first. */
  readonly ovens: readonly Omit<OvenFacts, "temperature">[];
}

/** From the one end of a range of heat to the other, degrees Fahrenheit. */
export interface Heats {
  readonly low: number;
  readonly high: number;
}

interface Draft {
  readonly length: number;
  readonly uses: readonly Use[];
  readonly tending: readonly Tending[];
  readonly oven: (Heats & { readonly racks: number }) | null;
}

/** A network that grows act by act, in minutes. */
export class NetworkDraft {
  private readonly acts: Draft[] = [];
  private readonly lags: Lag[] = [];
  private readonly isHurried = new Set<number>();

  private readonly kitchen: Kitchen;

  constructor(kitchen: Kitchen) {
    this.kitchen = kitchen;
  }

  get count(): number {
    return this.acts.length;
  }

  private add(length: number, needs: readonly number[], more: Partial<Draft> = {}): number {
    const uses = needs.map((thing): Use => ({ thing, amount: 1, from: 0, to: length }));
    this.acts.push({ length, tending: [], oven: null, ...more, uses: [...uses, ...(more.uses ?? [])] });
    return this.acts.length - 1;
  }

  /** Chopping and the like: the cook may put the knife down to stir something, and take it up again. */
  mise(length: number): number {
    return this.add(length, [cook]);
  }

  /** Hands-on at a burner or an appliance: nothing else until it is done. */
  handsOn(length: number, needs: readonly number[]): number {
    return this.add(length, [cook, care, ...needs]);
  }

  /** By itself, after a first minute; it may want to be looked after. */
  handsOff(length: number, needs: readonly number[], tending: readonly Tending[] = []): number {
    return this.add(length, needs, { uses: this.firstMinute(length), tending });
  }

  bake(length: number, heats: Heats, racks: number, tending: readonly Tending[] = []): number {
    return this.add(length, [], { uses: this.firstMinute(length), tending, oven: { ...heats, racks } });
  }

  /** Everything is on the table. */
  serve(): number {
    return this.add(0, []);
  }

  private firstMinute(length: number): readonly Use[] {
    return [cook, care].map((thing) => ({ thing, amount: 1, from: 0, to: Math.min(1, length) }));
  }

  /** From the end of the one to the start of the other: at least so long and, if asked, at most. */
  after(before: number, act: number, atLeast = 0, atMost: number | null = null): void {
    const length = this.acts[before]?.length ?? 0;
    this.lags.push({ from: before, to: act, least: length + atLeast });
    if (atMost === null) return;
    this.lags.push({ from: act, to: before, least: -(length + atMost) });
    this.isHurried.add(act);
  }

  /** Every end point of a range, of its own or another act's, that lies in the act's own; the most shared first. */
  private bakingsOf(oven: Heats & { readonly racks: number }): readonly Baking[] {
    const ranges = this.acts.flatMap((act) => act.oven ?? []);
    const ends = new Set(ranges.flatMap(({ low, high }) => [low, high]));
    const shared = (heat: number): number =>
      ranges.filter(({ low, high }) => low <= heat && heat <= high).length;
    return [...ends]
      .filter((heat) => oven.low <= heat && heat <= oven.high)
      .sort((a, b) => shared(b) - shared(a) || a - b)
      .flatMap((heat) => this.kitchen.ovens.map((_, index) => ({ oven: index, heat, racks: oven.racks })));
  }

  /** What must follow soon cannot be put down once begun. */
  private usesOf(act: Draft, index: number): readonly Use[] {
    const hasCare = act.uses.some((use) => use.thing === care);
    if (hasCare || !this.isHurried.has(index) || act.length === 0) return act.uses;
    return [...act.uses, { thing: care, amount: 1, from: 0, to: act.length }];
  }

  build(): Network {
    const { cooks, burners, ovens } = this.kitchen;
    return {
      lengths: this.acts.map((act) => act.length),
      earliest: this.acts.map(() => 0),
      latest: this.acts.map(() => Infinity),
      lags: this.lags,
      capacities: [cooks, cooks, burners, 1, 1],
      uses: this.acts.map((act, index) => this.usesOf(act, index)),
      tending: this.acts.map((act) => act.tending),
      ovens: ovens.map((oven) => ({ ...oven, temperature: 70 })),
      bakings: this.acts.map(({ oven }) => (oven === null ? [] : this.bakingsOf(oven))),
    };
  }
}

/** A look every so often, each a minute long, give or take; none in the first minute or after the end. */
export function every(minutes: number, within: number, length: number): readonly Tending[] {
  const count = Math.max(0, Math.ceil(length / minutes) - 1);
  return Array.from({ length: count }, (_, index) => around((index + 1) * minutes, within, length));
}

/** One look at this minute, give or take. */
export function around(minute: number, within: number, length: number): Tending {
  const from = Math.max(1, minute - within);
  return { thing: care, length: 1, from, to: Math.max(from, Math.min(length - 1, minute + within)) };
}
