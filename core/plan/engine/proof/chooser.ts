import type { Listener } from "./learn.ts";
import type { Model } from "./model.ts";
import type { Trail } from "./trail.ts";

/**
 * How the next choice is found: by the clock; or by what conflicts have been about of late, among all variables, or
 * among the switches first (orders and bakings), which leaves the times to the clock.
 */
export type Manner = "earliest" | "liveliest" | "liveliest switch";

const NOWHERE = -(2 ** 31);

/** Makes the choices of the search, as literals; it listens to conflicts for that. */
export class Chooser implements Listener {
  readonly #trail: Trail;
  readonly #model: Model;
  readonly #activity: Float64Array;
  #step = 1;
  /** By variable: its value in the best timetable so far, or NOWHERE. */
  readonly #hint: Int32Array;
  /** By variable: the lower end of the literal that was learnt about it last, or NOWHERE. */
  readonly #edge: Int32Array;
  /** What is not fixed at the root. */
  #open: Int32Array;
  /** The choice: at least this bound for that node. */
  node = 0;
  value = 0;

  constructor(trail: Trail, model: Model) {
    this.#trail = trail;
    this.#model = model;
    this.#activity = new Float64Array(model.variables);
    this.#hint = new Int32Array(model.variables).fill(NOWHERE);
    this.#edge = new Int32Array(model.variables).fill(NOWHERE);
    this.#open = new Int32Array(0);
  }

  bump(variable: number): void {
    const activity = (this.#activity[variable] ?? 0) + this.#step;
    this.#activity[variable] = activity;
    if (activity > 1e100) this.#rescale();
  }

  #rescale(): void {
    for (let at = 0; at < this.#activity.length; at += 1)
      this.#activity[at] = (this.#activity[at] ?? 0) * 1e-100;
    this.#step *= 1e-100;
  }

  learnt(node: number, value: number): void {
    this.#edge[node >> 1] = (node & 1) === 0 ? value : 1 - value;
  }

  /** Lets what conflicts were about before count less. */
  fade(): void {
    this.#step *= 1 / 0.95;
  }

  /** Values to come back to. */
  hint(values: ArrayLike<number>): void {
    for (let at = 0; at < values.length; at += 1) this.#hint[at] = values[at] ?? NOWHERE;
  }

  /** At the root: leaves out of sight what is fixed for good. */
  refresh(): void {
    const { bound } = this.#trail;
    const { variables, origin, end } = this.#model;
    const open: number[] = [];
    for (let at = 0; at < variables; at += 1) {
      if (at !== origin && at !== end && (bound[2 * at] ?? 0) + (bound[2 * at + 1] ?? 0) < 0) open.push(at);
    }
    this.#open = Int32Array.from(open);
  }

  /** Finds the next choice; false where every variable has its value. */
  choose(manner: Manner): boolean {
    const lively =
      manner === "earliest" ? -1 : this.#liveliest(manner === "liveliest" ? 0 : this.#model.times);
    const variable = lively >= 0 ? lively : this.#earliest();
    if (variable >= this.#model.times || lively >= 0) this.#split(variable);
    else if (variable >= 0) this.#atMost(variable, this.#trail.bound[2 * variable] ?? 0);
    else return this.#chooseEnd();
    return true;
  }

  /** Chooses an end half-way between the bounds, or boldly the lower one; false where there is none between them. */
  betOnEnd(isBold: boolean): boolean {
    const { end } = this.#model;
    const lower = this.#trail.bound[2 * end] ?? 0;
    const upper = -(this.#trail.bound[2 * end + 1] ?? 0);
    this.#atMost(end, isBold ? lower : (lower + upper) >> 1);
    return lower < upper;
  }

  #chooseEnd(): boolean {
    const { end } = this.#model;
    const lower = this.#trail.bound[2 * end] ?? 0;
    if (lower + (this.#trail.bound[2 * end + 1] ?? 0) === 0) return false;
    this.#atMost(end, lower);
    return true;
  }

  #atMost(variable: number, value: number): void {
    this.node = 2 * variable + 1;
    this.value = -value;
  }

  #atLeast(variable: number, value: number): void {
    this.node = 2 * variable;
    this.value = value;
  }

  /** The time that can come first; where it has bakings to choose from, the first of them that is open. */
  #earliest(): number {
    const open = this.#open;
    const { bound } = this.#trail;
    let best = -1;
    let lowest = 0;
    let highest = 0;
    for (let index = 0; index < open.length; index += 1) {
      const variable = open[index] ?? 0;
      if (variable >= this.#model.times && best >= 0) break;
      const lower = bound[2 * variable] ?? 0;
      const upper = -(bound[2 * variable + 1] ?? 0);
      if (lower === upper) continue;
      if (variable >= this.#model.times) return variable;
      if (best < 0 || lower < lowest || (lower === lowest && upper < highest)) {
        best = variable;
        lowest = lower;
        highest = upper;
      }
    }
    const choices = this.#model.choices[best] ?? [];
    for (const choice of choices)
      if ((bound[2 * choice] ?? 0) + (bound[2 * choice + 1] ?? 0) < 0) return choice;
    return best;
  }

  /** Of the variables from that one on, the one that conflicts have been about most; -1 if all are fixed. */
  #liveliest(least: number): number {
    const open = this.#open;
    const { bound } = this.#trail;
    let best = -1;
    let most = -1;
    for (let index = 0; index < open.length; index += 1) {
      const variable = open[index] ?? 0;
      const activity = this.#activity[variable] ?? 0;
      if (activity <= most || variable < least) continue;
      if ((bound[2 * variable] ?? 0) + (bound[2 * variable + 1] ?? 0) === 0) continue;
      best = variable;
      most = activity;
    }
    return best;
  }

  /** Chooses a side of the literal that was learnt last, the one with the best timetable's value in it. */
  #split(variable: number): void {
    const { bound } = this.#trail;
    const lower = bound[2 * variable] ?? 0;
    const upper = -(bound[2 * variable + 1] ?? 0);
    const known = this.#hint[variable] ?? NOWHERE;
    const hint = known === NOWHERE ? (variable < this.#model.times ? lower : 1) : known;
    const edge = this.#edge[variable] ?? NOWHERE;
    if (edge > lower && edge <= upper) {
      if (hint >= edge) this.#atLeast(variable, edge);
      else this.#atMost(variable, edge - 1);
    } else if (hint > lower && hint <= upper) this.#atLeast(variable, hint);
    else if (hint <= lower) this.#atMost(variable, lower);
    else this.#atLeast(variable, upper);
  }
}
