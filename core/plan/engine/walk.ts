import type { BothWays } from "./both-ways.ts";
import { ANY_BAKING } from "./builder.ts";
import { Chance } from "./chance.ts";
import type { Timetable } from "./network.ts";

/** A schedule and the order that it was built in. */
interface Built {
  readonly order: Int32Array;
  readonly wishes: Int32Array;
  readonly starts: Int32Array;
  readonly end: number;
  readonly missed: number;
}

/** How many orders are tried at first; the best of them is where the walk begins. */
const BEGINNINGS = 30;
/** Changes in turn without a better end after which it begins anew. */
const IDLE_CHANGES = 1000;
/** How far the keys of a beginning are strewn, as a part of the whole time. */
const STREWN = 0.3;
/** The stretch of time whose acts change places, as a part of the whole time. */
const NARROWEST = 0.12;
const WIDEST = 0.5;
/**
 * An end that is this much worse, in hundredths, is gone on from once in e times; the figure is divided by the acts,
 * for where there are many most changes harm a little.
 */
const BEARABLE = 16;

/** How much worse the one is, in hundredths of the whole; a missed limit weighs as much as all the time there is. */
const harm = (one: Built, other: Built): number =>
  (100 * (one.end - other.end)) / Math.max(1, other.end) + (one.missed - other.missed) * 1e6;

/**
 * Walks from schedule to schedule: the acts of a stretch of time change places, all is built anew, backwards and
 * forwards again, and what is no worse, or bearably worse, is gone on from.
 * Sources: Kirkpatrick, Gelatt & Vecchi (1983) for what is gone on from, here at one temperature; Tormos & Lova (2001)
 * for building backwards and forwards.
 */
export class Walk {
  /** How many schedules were built. */
  schedules = 0;
  private readonly both: BothWays;
  private readonly chance: Chance;
  private readonly keys: Float64Array;
  private readonly releases: Int32Array;
  private begun = 0;
  private idle = 0;
  private here: Built | null = null;
  /** The best since it began anew. */
  private top: Built | null = null;
  private best: Built | null = null;
  private table: Timetable | null = null;

  constructor(both: BothWays, seed: number) {
    const { acts } = both.there.compiled;
    this.both = both;
    this.chance = new Chance(seed);
    this.keys = new Float64Array(acts);
    this.releases = new Int32Array(acts);
  }

  /** The best schedule that keeps all limits; null: none yet. */
  get timetable(): Timetable | null {
    return this.best?.missed === 0 ? this.table : null;
  }

  /** The best schedule, though it may miss limits; null: none yet. */
  get nearest(): Timetable | null {
    return this.table;
  }

  /** When the best schedule ends. */
  get end(): number {
    return this.best?.end ?? 0;
  }

  /** How much work it did so far; see Builder. */
  get work(): number {
    return this.both.there.builder.work + this.both.back.builder.work;
  }

  /** One beginning or one change: up to three schedules. */
  step(): void {
    if (this.here === null || this.begun < BEGINNINGS) this.begin();
    else this.change(this.here);
  }

  /** Goes on from a timetable that was found elsewhere. */
  goOnFrom(timetable: Timetable): void {
    const { orders } = this.both.there;
    timetable.starts.forEach((start, act) => (this.keys[act] = start));
    this.begun = BEGINNINGS;
    this.idle = 0;
    this.here = this.improved(orders.byKey(this.keys), Int32Array.from(timetable.bakings));
    this.top = this.here;
  }

  private begin(): void {
    const wishes = new Int32Array(this.keys.length).fill(ANY_BAKING);
    const made = this.improved(this.beginning(this.begun), wishes);
    this.begun += 1;
    if (this.here !== null && harm(made, this.here) >= 0) return;
    this.here = made;
    this.top = made;
  }

  private change(here: Built): void {
    const next = this.changed(here);
    this.idle += 1;
    const worse = harm(next, here);
    const bearable = BEARABLE / this.keys.length;
    if (worse <= 0 || this.chance.next() < Math.exp(-worse / bearable)) this.here = next;
    if (this.top === null || harm(next, this.top) < 0) {
      this.top = next;
      this.idle = 0;
    }
    if (this.idle < IDLE_CHANGES) return;
    this.here = null;
    this.begun = 0;
    this.idle = 0;
  }

  /** By the latest start, by the latest end, by the middle between earliest and latest; then these, strewn. */
  private beginning(at: number): Int32Array {
    const { compiled, orders } = this.both.there;
    const { tails, heads, lengths, bound } = compiled;
    const strewn = at < 3 ? 0 : STREWN * bound;
    for (let act = 0; act < compiled.acts; act += 1) {
      const latest = bound - (tails[act] ?? 0);
      const other = at % 3 === 1 ? latest + (lengths[act] ?? 0) : (latest + (heads[act] ?? 0)) / 2;
      this.keys[act] = (at % 3 === 0 ? latest : other) + strewn * (this.chance.next() - 0.5);
    }
    return orders.byKey(this.keys);
  }

  private changed(from: Built): Built {
    const { compiled, orders } = this.both.there;
    const { chance, keys } = this;
    const width = Math.max(2, from.end * (NARROWEST + (WIDEST - NARROWEST) * chance.next()));
    const first = chance.next() * (from.end - width / 2) - width / 4;
    const wishes = this.changedWishes(from.wishes);
    for (let act = 0; act < compiled.acts; act += 1) {
      const middle = (from.starts[act] ?? 0) + (compiled.lengths[act] ?? 0) / 2;
      const isIn = middle >= first && middle <= first + width;
      keys[act] = isIn ? first + chance.next() * width : middle;
    }
    return this.improved(orders.byKey(keys), wishes);
  }

  private changedWishes(wishes: Int32Array): Int32Array {
    const { bakings, ovens } = this.both.there.compiled.network;
    const { chance } = this;
    if (ovens.length === 0 || chance.next() < 0.5) return wishes;
    return wishes.map((wish, act) => {
      const count = bakings[act]?.length ?? 0;
      return count > 1 && chance.next() < 0.2 ? chance.below(count + 1) - 1 : wish;
    });
  }

  /** Builds forwards, from there backwards from the end, and forwards again. */
  private improved(order: Int32Array, wishes: Int32Array): Built {
    const { there, back } = this.both;
    const made = this.built(order, wishes);
    this.schedules += 1;
    back.builder.build(back.orders.turned(made.starts, made.missed), wishes, this.releases.fill(-made.end));
    const again = this.built(there.orders.turned(back.builder.starts, back.builder.missed), wishes);
    return harm(again, made) <= 0 ? again : made;
  }

  private built(order: Int32Array, wishes: Int32Array): Built {
    const { builder } = this.both.there;
    this.schedules += 1;
    builder.build(order, wishes);
    const { end, missed } = builder;
    const made = { order, wishes, starts: builder.starts.slice(), end, missed };
    if (this.best === null || harm(made, this.best) < 0) {
      this.best = made;
      this.table = builder.timetable();
    }
    return made;
  }
}
