import type { Act, Arc } from "./act.ts";
import type { BothWays, OneWay } from "./engine/both-ways.ts";
import { bothWays } from "./engine/both-ways.ts";
import { ANY_BAKING } from "./engine/builder.ts";
import { closureOf } from "./engine/closure.ts";
import type { Timetable } from "./engine/network.ts";
import { letGo, topological } from "./limits.ts";
import { networkOf, unitOf } from "./network-of.ts";
import type { Baking } from "./oven.ts";
import type { Problem } from "./problem.ts";

/** Where one act stands; times in milliseconds from now. */
export interface Place {
  readonly start: number;
  readonly baking: Baking | null;
}

/** A place for every act, by index. */
export type Schedule = readonly Place[];

/** In what order acts are placed, the lowest key first, and which of its bakings each takes (ANY_BAKING: the soonest). */
export interface Order {
  readonly keys: readonly number[];
  readonly bakings: readonly number[];
}

/** A follower that must come this soon is placed together with what it follows. */
const TIGHT_MS = 15 * 60_000;
const isTight = ({ atLeast, atMost }: Arc): boolean => atMost !== null && atMost - atLeast <= TIGHT_MS;
/** The least difference between two keys. */
const NEXT = 1e-3;

/** Builds schedules of a problem, forwards from now and backwards from the table. */
export class Drafts {
  readonly problem: Problem;
  readonly both: BothWays;
  private readonly unit: number;
  /** Who must follow whom soon; each before those that follow in their turn. */
  private readonly ties: readonly Arc[];

  constructor(problem: Problem, both: BothWays, unit: number) {
    this.problem = problem;
    this.both = both;
    this.unit = unit;
    this.ties = topological(problem).flatMap((act) => (problem.before[act] ?? []).filter(isTight));
  }

  /** No schedule ends sooner, in milliseconds from now. */
  get bound(): number {
    return this.both.there.compiled.bound * this.unit;
  }

  /**
   * Each as early as it fits: in this very order, which may have been a schedule's, where everything has its place
   * already; and with what must follow soon placed next, if that is another order.
   * @param release not before this, by act; milliseconds from now
   */
  forward(order: Order, release: readonly number[]): readonly [Schedule, ...Schedule[]] {
    const keys = this.followersNext(order.keys);
    const told = this.forwardAs(order, release);
    const isSame = keys.every((key, index) => key === order.keys[index]);
    return isSame ? [told] : [told, this.forwardAs({ ...order, keys }, release)];
  }

  private forwardAs(order: Order, release: readonly number[]): Schedule {
    this.build(this.both.there, order, release);
    return this.scheduleOf(this.both.there.builder.timetable());
  }

  /**
   * Each as late as it fits, in this order.
   * @param ends not ended after this, by act; milliseconds from now
   * @returns the latest starts, in milliseconds from now
   */
  backward(order: Order, ends: readonly number[]): readonly number[] {
    const { builder, compiled } = this.both.back;
    this.build(
      this.both.back,
      { ...order, keys: this.leadersNext(order.keys) },
      ends.map((end) => -end),
    );
    return this.problem.acts.map(
      (_, index) => -this.unit * ((builder.starts[index] ?? 0) + (compiled.lengths[index] ?? 0)),
    );
  }

  /** What the engine found, as a schedule. */
  scheduleOf({ starts, bakings }: Pick<Timetable, "starts" | "bakings">): Schedule {
    return this.problem.acts.map((act, index): Place => {
      const baking = act.bakings[bakings[index] ?? 0] ?? null;
      return { start: act.running?.start ?? (starts[index] ?? 0) * this.unit, baking };
    });
  }

  /** A schedule for the engine to go on from. */
  timetableOf(schedule: Schedule): Timetable {
    const { bakings } = this.orderOf(schedule);
    return {
      starts: schedule.map(({ start }) => Math.floor(start / this.unit)),
      bakings: bakings.map((baking) => Math.max(0, baking)),
      tended: schedule.map(() => []),
    };
  }

  /** The order of a schedule: by its starts, with its bakings. */
  orderOf(schedule: Schedule): Order {
    return {
      keys: schedule.map((place) => place.start),
      bakings: schedule.map(({ baking }, index) => bakingAt(this.problem.acts[index], baking)),
    };
  }

  /** What must follow soon is placed next, or what comes between would take its moment. */
  private followersNext(keys: readonly number[]): readonly number[] {
    const next = [...keys];
    for (const { from, to } of this.ties) next[to] = Math.min(next[to] ?? 0, (next[from] ?? 0) + NEXT);
    return next;
  }

  /** The same where time runs backwards. */
  private leadersNext(keys: readonly number[]): readonly number[] {
    const next = [...keys];
    for (const { from, to } of this.ties.toReversed())
      next[from] = Math.min(next[from] ?? 0, (next[to] ?? 0) + NEXT);
    return next;
  }

  private build({ orders, builder }: OneWay, { keys, bakings }: Order, release: readonly number[]): void {
    const order = orders.byKey(Float64Array.from(keys));
    const wishes = Int32Array.from(bakings);
    const floors = Int32Array.from(release, (ms) => Math.ceil(ms / this.unit));
    builder.build(order, wishes, floors);
    const { missed } = builder;
    if (missed === 0) return;
    // What cannot be kept in this order puts nothing off either.
    builder.build(order, wishes, floors, "as it comes");
    if (builder.missed > missed) builder.build(order, wishes, floors);
  }
}

/** Which of an act's bakings this is; ANY_BAKING where it is none of them. */
export function bakingAt(act: Act | undefined, baking: Baking | null): number {
  if (act === undefined || baking === null) return ANY_BAKING;
  const at = act.bakings.findIndex((one) => one.oven === baking.oven && one.heat === baking.heat);
  return at < 0 ? ANY_BAKING : at;
}

/** Drafts for a problem, and a sentence for each limit that had to be let go because it contradicts others. */
export function draftsOf(problem: Problem): { readonly drafts: Drafts; readonly broken: readonly string[] } {
  const broken: string[] = [];
  for (let open = problem; ;) {
    const unit = unitOf(open);
    const network = networkOf(open, unit);
    const closure = closureOf(network);
    if (!("circle" in closure)) return { drafts: new Drafts(open, bothWays(network, closure), unit), broken };
    const without = letGo(open, closure.circle);
    broken.push(without.sentence);
    open = without.problem;
  }
}
