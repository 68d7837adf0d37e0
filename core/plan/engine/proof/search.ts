import { Chooser, type Manner } from "./chooser.ts";
import { Explainer } from "./explain.ts";
import { Learner } from "./learn.ts";
import { luby } from "./luby.ts";
import type { Model } from "./model.ts";
import { Propagation } from "./propagation.ts";
import { Because, type Trail } from "./trail.ts";

/** Conflicts between two restarts, at the least; and learnt nogoods until the first are forgotten, then more by so many. */
const RUN = 100;
const ROOM = 2000;
const MORE_ROOM = 200;

/** What came of a stretch of search. */
export type Finding = "closed" | "better" | "paused";

/** The search itself: propagate, learn from what fails, choose, and start anew now and then. */
export class Search {
  readonly #model: Model;
  readonly #propagation: Propagation;
  readonly #trail: Trail;
  readonly #chooser: Chooser;
  readonly #explainer: Explainer;
  readonly #learner: Learner;
  #isOpen: boolean;
  /** Whether a better timetable has just been found: where one step was easy, a leap may be. */
  #isDescending = false;
  #restarts = 0;
  /** Conflicts until the next restart. */
  #left = 0;
  #room = ROOM;
  conflicts = 0;
  /** What no timetable can be shorter than. */
  least = 0;

  constructor(model: Model) {
    this.#model = model;
    this.#propagation = new Propagation(model);
    this.#trail = this.#propagation.of.trail;
    this.#chooser = new Chooser(this.#trail, model);
    this.#explainer = new Explainer(this.#propagation.of);
    this.#learner = new Learner(this.#propagation.of, this.#explainer, this.#chooser);
    this.#isOpen = this.#propagation.begin();
    if (this.#isOpen) this.#settle();
  }

  /** Values of all variables to come back to. */
  hint(values: ArrayLike<number>): void {
    this.#chooser.hint(values);
  }

  /** Takes in that only ends up to this one are of interest. */
  limit(end: number): void {
    this.#rewind();
    this.#isDescending = true;
    const node = 2 * this.#model.end + 1;
    if (!this.#isOpen || (this.#trail.bound[node] ?? 0) >= -end) return;
    this.#isOpen = this.#trail.raise(node, -end, Because.choice) && this.#propagation.run();
    if (this.#isOpen) this.#settle();
  }

  /** After "better": the value of each variable. */
  values(): Int32Array {
    return Int32Array.from({ length: this.#model.variables }, (_, at) => this.#trail.bound[2 * at] ?? 0);
  }

  /** How much was looked at so far; see Propagation. */
  get work(): number {
    return this.#propagation.work;
  }

  /** Searches for a timetable within the limit until so many conflicts have been met, or so much was looked at. */
  run(conflicts: number, work: number): Finding {
    const until = this.conflicts + conflicts;
    const enough = this.work + work;
    while (this.#isOpen) {
      if (!this.#propagation.run()) this.#isOpen = this.#recover();
      else if (this.conflicts >= until || this.work >= enough) return "paused";
      else if (this.#left <= 0) this.#restart();
      else if (this.#trail.depth === 0 && this.#trail.size > 0) this.#settle();
      else if (!this.#choose()) return "better";
    }
    return "closed";
  }

  #choose(): boolean {
    // Every other run first bets on an end half-way down: lost, the bet raises the bound; won, it saves many steps.
    const isRoot = this.#trail.depth === 0;
    const isBet =
      isRoot &&
      (this.#isDescending || this.#restarts % 2 === 1) &&
      this.#chooser.betOnEnd(!this.#isDescending && this.#restarts % 4 === 3);
    if (isRoot) this.#isDescending = false;
    if (!isBet && !this.#chooser.choose(this.#manner())) return false;
    this.#trail.deepen();
    this.#trail.raise(this.#chooser.node, this.#chooser.value, Because.choice);
    return true;
  }

  /** Orders decide most problems; the clock finds timetables; where much fits beside each other, times decide. */
  #manner(): Manner {
    const turn = this.#restarts % 4;
    if (turn === 1) return "earliest";
    return turn === 0 ? "liveliest" : "liveliest switch";
  }

  #restart(): void {
    this.#left = RUN * luby(this.#restarts);
    this.#restarts += 1;
    this.#rewind();
    this.#settle();
    const { nogoods } = this.#propagation.of;
    if (nogoods.learnt < this.#room) return;
    nogoods.reduce();
    this.#room += MORE_ROOM;
  }

  #rewind(): void {
    this.#trail.backTo(0);
    this.#propagation.rewound();
  }

  /** What holds at the root holds for good. */
  #settle(): void {
    this.#trail.settle();
    this.#propagation.rewound();
    this.#chooser.refresh();
    this.least = this.#trail.bound[2 * this.#model.end] ?? 0;
  }

  /** Learns from a contradiction and goes back to where it helps; false if nothing is left to try. */
  #recover(): boolean {
    this.conflicts += 1;
    this.#left -= 1;
    const learner = this.#learner;
    this.#propagation.explainTrouble(this.#explainer);
    learner.learn(this.#explainer.literals, this.conflicts);
    if (learner.back < 0) return false;
    this.#chooser.fade();
    this.#trail.backTo(learner.back);
    this.#propagation.rewound();
    const { array, count } = learner.literals;
    const { nogoods } = this.#propagation.of;
    const isAlone = count === 2;
    const name = isAlone ? 0 : nogoods.add(array, count, learner.depths, this.conflicts);
    const reason = isAlone ? Because.choice : name * 8 + Because.nogood;
    return this.#trail.raise((array[0] ?? 0) ^ 1, 1 - (array[1] ?? 0), reason);
  }
}
