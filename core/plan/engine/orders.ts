import type { Compiled } from "./compiled.ts";

/** Orders in which a network's acts may be placed. */
export class Orders {
  private readonly compiled: Compiled;
  private readonly acts: number;
  private readonly after: readonly (readonly number[])[];
  /** One order that is right, to settle what starts at the same time. */
  private readonly rank: Int32Array;
  private readonly key: Float64Array;
  /** How many must come before each act; and room for how many still must, and for those that need wait for none. */
  private readonly waits: Int32Array;
  private readonly left: Int32Array;
  private readonly ready: Int32Array;

  constructor(compiled: Compiled) {
    const { acts, before } = compiled;
    this.compiled = compiled;
    this.acts = acts;
    const after = before.map((): number[] => []);
    before.forEach((all, act) => {
      for (const other of all) after[other]?.push(act);
    });
    this.after = after;
    this.rank = new Int32Array(acts);
    this.key = new Float64Array(acts);
    this.waits = Int32Array.from(before, (all) => all.length);
    this.left = new Int32Array(acts);
    this.ready = new Int32Array(acts);
    this.byKey(new Float64Array(acts)).forEach((act, place) => (this.rank[act] = place));
  }

  /** By key, the lowest first, as far as what must come before allows. */
  byKey(keys: Float64Array): Int32Array {
    const { acts, after, left, ready } = this;
    left.set(this.waits);
    const order = new Int32Array(acts);
    let count = 0;
    for (let act = 0; act < acts; act += 1) if (left[act] === 0) ready[count++] = act;
    for (let place = 0; place < acts; place += 1) {
      let best = 0;
      let lowest = keys[ready[0] ?? 0] ?? 0;
      for (let at = 1; at < count; at += 1) {
        const key = keys[ready[at] ?? 0] ?? 0;
        if (key >= lowest) continue;
        best = at;
        lowest = key;
      }
      const act = ready[best] ?? 0;
      count -= 1;
      ready[best] = ready[count] ?? 0;
      order[place] = act;
      for (const other of after[act] ?? []) {
        left[other] = (left[other] ?? 0) - 1;
        if (left[other] === 0) ready[count++] = other;
      }
    }
    return order;
  }

  /**
   * In the order of the ends of a schedule of the mirrored network, the last first: in the true order of time, if the
   * schedule was mirrored, and the other way round.
   * @param missed by how much the schedule misses limits: where it does, its order may have to be put right
   */
  turned(starts: Int32Array, missed: number): Int32Array {
    const { acts, key, rank } = this;
    const { lengths } = this.compiled;
    for (let act = 0; act < acts; act += 1) key[act] = -(starts[act] ?? 0) - (lengths[act] ?? 0);
    if (missed > 0) return this.byKey(key);
    const order = new Int32Array(acts);
    for (let act = 0; act < acts; act += 1) {
      const own = key[act] ?? 0;
      let to = act;
      for (; to > 0; to -= 1) {
        const other = order[to - 1] ?? 0;
        const theirs = key[other] ?? 0;
        if (theirs < own || (theirs === own && (rank[other] ?? 0) <= (rank[act] ?? 0))) break;
        order[to] = other;
      }
      order[to] = act;
    }
    return order;
  }
}
