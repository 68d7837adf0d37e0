import type { Compiled } from "./compiled.ts";
import { OPEN } from "./compiled.ts";
import { NEVER } from "./closure.ts";
import type { Baking, OvenFacts, Timetable } from "./network.ts";
import { changeOver } from "./network.ts";
import { Profile } from "./profile.ts";

/** An act that has no place yet. */
const NOWHERE = 2 ** 30;
/** How often acts may be moved to keep a maximum lag before it is given up, for each act of the network. */
const MOVES_AN_ACT = 1;

/** How many later starts are tried for an act whose tending finds no moment. */
const TENDING_TRIES = 50;

/** No wish which of its bakings an act takes: that which lets it start first. */
export const ANY_BAKING = -1;

/**
 * Builds schedules: one act after the other, in a given order, each as early as it fits (serial schedule generation).
 * Where an act comes too late for a maximum lag, all is undone up to the act that set it, that act is put off and the
 * rest placed anew; after too many such moves the lag is given up and counted. Written for speed: arrays are reused,
 * and what was built is there until the next order is built.
 */
export class Builder {
  readonly starts: Int32Array;
  readonly bakings: Int32Array;
  /** The end of all. */
  end = 0;
  /** By how much maximum lags were missed, in all. */
  missed = 0;
  /** How often an act was looked at for a place so far: a measure of the work, for callers without a clock. */
  work = 0;
  private readonly profiles: readonly Profile[];
  private readonly tended: readonly Int32Array[];
  private readonly floors: Int32Array;
  private readonly places: Int32Array;
  private readonly inOven: readonly number[][];
  /** The last window asked for: the latest start and whose it is. */
  private high = OPEN;
  private cause = -1;

  private readonly compiled: Compiled;

  constructor(compiled: Compiled) {
    this.compiled = compiled;
    const { acts, network } = compiled;
    this.starts = new Int32Array(acts);
    this.bakings = new Int32Array(acts);
    this.floors = new Int32Array(acts);
    this.places = new Int32Array(acts);
    const racks = network.ovens.map((oven) => new Profile(oven.racks));
    this.profiles = [...network.capacities.map((capacity) => new Profile(capacity)), ...racks];
    this.tended = network.tending.map((all) => new Int32Array(all.length));
    this.inOven = network.ovens.map(() => []);
  }

  /** The schedule that was built last, to keep. */
  timetable(): Timetable {
    return {
      starts: [...this.starts],
      bakings: [...this.bakings],
      tended: this.tended.map((moments) => [...moments]),
    };
  }

  /**
   * @param order every act once, none before those that must stand before it
   * @param wishes which of its bakings each act takes, or ANY_BAKING
   * @param releases no act starts before its own
   * @param undoing whether acts are undone for a maximum lag; else what it misses is counted, and no act put off for it
   */
  build(
    order: Int32Array,
    wishes: Int32Array,
    releases: Int32Array | null = null,
    undoing: "undoing" | "as it comes" = "undoing",
  ): void {
    const { acts, lengths } = this.compiled;
    this.reset();
    if (releases !== null) this.floors.set(releases);
    let moves = undoing === "undoing" ? acts * MOVES_AN_ACT : 0;
    for (let place = 0; place < acts; place += 1) {
      const act = order[place] ?? 0;
      const low = this.windowOf(act);
      const { high, cause } = this;
      const start = this.put(act, low, wishes[act] ?? ANY_BAKING);
      if (start > high && cause >= 0 && moves > 0) {
        moves -= 1;
        this.takeOff(act);
        const back = this.places[cause] ?? 0;
        this.floors[cause] = (this.starts[cause] ?? 0) + start - high;
        for (let at = back; at < place; at += 1) this.takeOff(order[at] ?? 0);
        place = back - 1;
        continue;
      }
      if (start > high) this.missed += start - high;
      this.places[act] = place;
    }
    for (let act = 0; act < acts; act += 1)
      this.end = Math.max(this.end, (this.starts[act] ?? 0) + (lengths[act] ?? 0));
  }

  private reset(): void {
    this.end = 0;
    this.missed = 0;
    this.starts.fill(NOWHERE);
    this.floors.fill(NEVER);
    for (const profile of this.profiles) profile.clear();
    for (const oven of this.inOven) oven.length = 0;
  }

  /** The earliest start that what is placed leaves; `high` and `cause` tell the latest. */
  private windowOf(act: number): number {
    const { heads, latest, lower, upper } = this.compiled;
    const { starts } = this;
    let low = Math.max(heads[act] ?? 0, this.floors[act] ?? 0);
    for (let at = lower.first[act] ?? 0, end = lower.first[act + 1] ?? 0; at < end; at += 1) {
      const other = starts[lower.other[at] ?? 0] ?? 0;
      if (other !== NOWHERE) low = Math.max(low, other + (lower.gap[at] ?? 0));
    }
    this.high = latest[act] ?? OPEN;
    this.cause = -1;
    for (let at = upper.first[act] ?? 0, end = upper.first[act + 1] ?? 0; at < end; at += 1) {
      const other = upper.other[at] ?? 0;
      const start = starts[other] ?? 0;
      if (start === NOWHERE || start - (upper.gap[at] ?? 0) >= this.high) continue;
      this.high = start - (upper.gap[at] ?? 0);
      this.cause = other;
    }
    return low;
  }

  /** Gives an act its place: the earliest from `low` on. */
  private put(act: number, low: number, wish: number): number {
    const choices = this.compiled.network.bakings[act] ?? [];
    const choice = choices.length <= 1 ? 0 : wish === ANY_BAKING ? this.soonest(act, low, choices) : wish;
    const baking = choices[choice];
    const isFixed = this.compiled.heads[act] === this.compiled.latest[act];
    let start = isFixed ? (this.compiled.heads[act] ?? 0) : this.firstStart(act, low, baking);
    this.take(act, start, baking, 1);
    let tries = isFixed ? 0 : TENDING_TRIES;
    for (let put = this.tend(act, start, tries); put > start; put = this.tend(act, start, tries)) {
      tries -= 1;
      this.take(act, start, baking, -1);
      start = this.firstStart(act, put, baking);
      this.take(act, start, baking, 1);
    }
    this.starts[act] = start;
    this.bakings[act] = choice;
    if (baking !== undefined) this.inOven[baking.oven]?.push(act);
    return start;
  }

  private takeOff(act: number): void {
    const start = this.starts[act] ?? NOWHERE;
    const baking = this.compiled.network.bakings[act]?.[this.bakings[act] ?? 0];
    this.take(act, start, baking, -1);
    this.untend(act, this.tended[act]?.length ?? 0);
    this.starts[act] = NOWHERE;
    if (baking === undefined) return;
    const oven = this.inOven[baking.oven];
    oven?.splice(oven.indexOf(act), 1);
  }

  /** The baking that lets it start first, the likeliest of several. */
  private soonest(act: number, low: number, choices: readonly Baking[]): number {
    const starts = choices.map((baking) => this.firstStart(act, low, baking));
    return starts.indexOf(Math.min(...starts));
  }

  /** The earliest start from `low` on at which all that it takes is free; its tending is not looked at. */
  private firstStart(act: number, low: number, baking: Baking | undefined): number {
    const { first, thing, amount, from, to } = this.compiled.uses;
    const [begin, end] = [first[act] ?? 0, first[act + 1] ?? 0];
    let start = low;
    for (let before = NEVER; before !== start;) {
      before = start;
      this.work += 1;
      for (let at = begin; at < end; at += 1) {
        const after = from[at] ?? 0;
        const profile = this.profiles[thing[at] ?? 0];
        if (profile !== undefined)
          start = profile.fit(amount[at] ?? 0, start + after, (to[at] ?? 0) - after) - after;
      }
      if (baking !== undefined) start = this.firstBaking(act, start, baking);
    }
    return start;
  }

  private firstBaking(act: number, low: number, baking: Baking): number {
    const { network, lengths } = this.compiled;
    const oven = network.ovens[baking.oven];
    if (oven === undefined) return low;
    const length = lengths[act] ?? 0;
    const start = this.racksOf(baking).fit(baking.racks, low, length);
    return this.hotEnough(oven, baking, start, length);
  }

  /** `start`, or the first moment after it at which one of the bakings in the way is over and the oven turned. */
  private hotEnough(oven: OvenFacts, baking: Baking, start: number, length: number): number {
    const { network, lengths } = this.compiled;
    if (oven.temperature !== null && start >= 0) {
      const warm = changeOver(oven, oven.temperature, baking.heat);
      if (start < warm) return warm;
    }
    for (const other of this.inOven[baking.oven] ?? []) {
      const heat = network.bakings[other]?.[this.bakings[other] ?? 0]?.heat ?? 0;
      if (heat === baking.heat) continue;
      const from = this.starts[other] ?? 0;
      const free = from + (lengths[other] ?? 0) + changeOver(oven, heat, baking.heat);
      if (free > start && from - changeOver(oven, baking.heat, heat) < start + length) return free;
    }
    return start;
  }

  private racksOf({ oven }: Baking): Profile {
    const racks = this.profiles[this.compiled.network.capacities.length + oven];
    if (racks === undefined) throw new Error(`no oven ${oven}`);
    return racks;
  }

  private take(act: number, start: number, baking: Baking | undefined, sign: 1 | -1): void {
    const { first, thing, amount, from, to } = this.compiled.uses;
    for (let at = first[act] ?? 0; at < (first[act + 1] ?? 0); at += 1) {
      const profile = this.profiles[thing[at] ?? 0];
      profile?.take(sign * (amount[at] ?? 0), start + (from[at] ?? 0), start + (to[at] ?? 0));
    }
    if (baking !== undefined)
      this.racksOf(baking).take(sign * baking.racks, start, start + (this.compiled.lengths[act] ?? 0));
  }

  /**
   * Finds all its tendings a moment. Where one finds none: a later start that may do, and none is kept; without a try
   * left it is tended at the first moment, whoever is busy then.
   */
  private tend(act: number, start: number, tries: number): number {
    const all = this.compiled.network.tending[act] ?? [];
    const tended = this.tended[act];
    if (tended === undefined) return start;
    for (let at = 0; at < all.length; at += 1) {
      const one = all[at];
      const profile = one === undefined ? undefined : this.profiles[one.thing];
      if (one === undefined || profile === undefined) continue;
      let moment = profile.fit(1, start + one.from, one.length);
      if (moment > start + one.to) {
        if (tries > 0) {
          this.untend(act, at);
          return moment - one.to;
        }
        moment = start + one.from;
        this.missed += 1;
      }
      profile.take(1, moment, moment + one.length);
      tended[at] = moment;
    }
    return start;
  }

  private untend(act: number, count: number): void {
    const all = this.compiled.network.tending[act] ?? [];
    for (let at = 0; at < count; at += 1) {
      const one = all[at];
      const moment = this.tended[act]?.[at] ?? 0;
      if (one !== undefined) this.profiles[one.thing]?.take(-1, moment, moment + one.length);
    }
  }
}
