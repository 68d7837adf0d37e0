import type { Literals } from "./literals.ts";
import { conditionValue } from "./model.ts";
import type { Propagators } from "./propagators.ts";

/** A stretch of time [begin, finish), how much of the resource is left in it, and what is asked about it. */
interface Stretch {
  readonly begin: number;
  readonly finish: number;
  readonly room: number;
  /** The part that does not count; -1: all count. */
  readonly except: number;
  /** Bounds are taken as they were before this entry of the trail. */
  readonly entry: number;
}

/**
 * Explains what resources made follow. A moment is a stretch of length 1: a part that surely runs at it, or so long
 * within a stretch, does so because it starts neither sooner nor later than at two bounds, and no more is said of it.
 */
export class Takers {
  readonly #of: Propagators;
  readonly #literals: Literals;
  readonly #found: Int32Array;
  /** By place in `found`: for how long the part surely runs within the stretch. */
  readonly #sure: Int32Array;

  constructor(of: Propagators, literals: Literals) {
    this.#of = of;
    this.#literals = literals;
    this.#found = new Int32Array(of.parts.node.length);
    this.#sure = new Int32Array(of.parts.node.length);
  }

  /** Why too much is taken at that moment. */
  explainClash(resource: number, moment: number): void {
    this.explainOverload(resource, moment, moment + 1);
  }

  /** Why there is too much to do in that stretch. */
  explainOverload(resource: number, begin: number, finish: number): void {
    const room = (this.#of.profiles[resource]?.capacity ?? 0) * (finish - begin);
    this.#addTakers(resource, { begin, finish, room, except: -1, entry: this.#of.trail.size });
  }

  /** Why the part cannot run at the moment that the entry tells: it starts later, or sooner, or is not chosen. */
  explainMoment(part: number, entry: number): void {
    const { parts, trail, profiles } = this.#of;
    const node = trail.node[entry] ?? 0;
    const start = parts.node[part] ?? 0;
    const moment = trail.detail[entry] ?? 0;
    if (node !== start + 1) this.#literals.add(start, moment - (parts.to[part] ?? 0) + 1);
    if (node !== start) this.#literals.add(start + 1, (parts.from[part] ?? 0) - moment);
    const condition = parts.condition[part] ?? -1;
    if (node === start || node === start + 1) this.#addCondition(condition);
    const resource = parts.resource[part] ?? 0;
    const room = (profiles[resource]?.capacity ?? 0) - (parts.amount[part] ?? 0);
    this.#addTakers(resource, { begin: moment, finish: moment + 1, room, except: part, entry });
  }

  /** Why the part, if it were beyond the bound, would have to do more in the stretch than the others leave room for. */
  explainSpan(part: number, entry: number, value: number): void {
    const { parts, trail, profiles } = this.#of;
    const [begin, finish] = [trail.detail[entry] ?? 0, trail.extent[entry] ?? 0];
    const node = trail.node[entry] ?? 0;
    const isDelay = (node & 1) === 0;
    const from = parts.from[part] ?? 0;
    const to = parts.to[part] ?? 0;
    const beyond = isDelay ? finish - (value - 1 + from) : 1 - value + to - begin;
    const least = Math.min(to - from, beyond);
    this.#literals.add(node, isDelay ? begin + least - to : least + from - finish);
    this.#addCondition(parts.condition[part] ?? -1);
    const resource = parts.resource[part] ?? 0;
    const whole = (profiles[resource]?.capacity ?? 0) * (finish - begin);
    const room = whole - least * (parts.amount[part] ?? 0);
    this.#addTakers(resource, { begin, finish, room, except: part, entry });
  }

  #addCondition(condition: number): void {
    if (condition >= 0) this.#literals.add(condition, conditionValue(condition));
  }

  /** How long the part surely runs within the stretch, wherever it starts. */
  #sureWithin(part: number, stretch: Stretch): number {
    const { parts, trail } = this.#of;
    const start = parts.node[part] ?? 0;
    const from = parts.from[part] ?? 0;
    const to = parts.to[part] ?? 0;
    const early = trail.boundBefore(start, stretch.entry) + to - stretch.begin;
    if (early <= 0) return 0;
    const late = stretch.finish - from + trail.boundBefore(start + 1, stretch.entry);
    if (late <= 0) return 0;
    const condition = parts.condition[part] ?? -1;
    if (condition >= 0 && trail.boundBefore(condition, stretch.entry) < conditionValue(condition)) return 0;
    return Math.min(early, late, to - from, stretch.finish - stretch.begin);
  }

  /** Adds parts that together surely take more than the room, each for no longer than is needed. */
  #addTakers(resource: number, stretch: Stretch): void {
    const { parts, profiles } = this.#of;
    const own = profiles[resource]?.own;
    if (own === undefined) return;
    let count = 0;
    let excess = -stretch.room - 1;
    for (let index = 0; index < own.length; index += 1) {
      const part = own[index] ?? 0;
      const sure = part === stretch.except ? 0 : this.#sureWithin(part, stretch);
      if (sure === 0) continue;
      this.#found[count] = part;
      this.#sure[count] = sure;
      count += 1;
      excess += sure * (parts.amount[part] ?? 0);
    }
    for (let index = 0; index < count; index += 1) {
      const part = this.#found[index] ?? 0;
      const amount = parts.amount[part] ?? 0;
      const sure = this.#sure[index] ?? 0;
      const spared = Math.min(sure, Math.floor(excess / amount));
      excess -= spared * amount;
      if (spared < sure) this.#addTaker(part, sure - spared, stretch);
    }
  }

  #addTaker(part: number, needed: number, stretch: Stretch): void {
    const { parts } = this.#of;
    const start = parts.node[part] ?? 0;
    this.#literals.add(start, stretch.begin + needed - (parts.to[part] ?? 0));
    this.#literals.add(start + 1, needed + (parts.from[part] ?? 0) - stretch.finish);
    this.#addCondition(parts.condition[part] ?? -1);
  }
}
