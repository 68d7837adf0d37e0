import { Literals } from "./literals.ts";
import { conditionValue } from "./model.ts";
import type { Propagators } from "./propagators.ts";
import { Takers } from "./takers.ts";
import { Because } from "./trail.ts";

/**
 * Tells after the fact why a bound holds: as literals that were true before and that together imply it, each as weak
 * as it may be. Asked only while learning, so that propagation itself keeps nothing but a reason's name.
 */
export class Explainer {
  readonly #of: Propagators;
  readonly #takers: Takers;
  /** The last explanation. */
  readonly literals: Literals;

  constructor(of: Propagators) {
    this.#of = of;
    // A nogood or a resource names each node at most once, an edge three conditions and two bounds.
    this.literals = new Literals(of.trail.bound.length + 3 * of.parts.node.length + 8);
    this.#takers = new Takers(of, this.literals);
  }

  /** Why the entry raised its node's bound to (at least) that value. */
  explain(entry: number, value: number): void {
    this.literals.count = 0;
    const { trail } = this.#of;
    const reason = trail.reason[entry] ?? -1;
    const about = reason >> 3;
    switch (reason & 7) {
      case Because.nogood:
        return this.#explainNogood(about, trail.node[entry] ?? 0);
      case Because.edge:
        return this.#explainEdge(about, value);
      case Because.conditional:
        this.#explainEdge(about, value);
        return this.#addConditions(about, -1);
      case Because.refuted:
        return this.#explainRefuted(about, entry);
      case Because.part:
        return this.#takers.explainMoment(about, entry);
      case Because.span:
        return this.#takers.explainSpan(about, entry, value);
    }
  }

  #explainNogood(nogood: number, node: number): void {
    const { nogoods } = this.#of;
    const { store } = nogoods;
    const end = nogoods.end(nogood);
    for (let at = nogoods.begin(nogood); at < end; at += 2) {
      if (store[at] !== (node ^ 1)) this.literals.add(store[at] ?? 0, store[at + 1] ?? 0);
    }
  }

  #explainEdge(arc: number, value: number): void {
    const { edges } = this.#of;
    this.literals.add(edges.tail[arc] ?? 0, value - (edges.least[arc] ?? 0));
  }

  #addConditions(arc: number, except: number): void {
    const { starts, entries } = this.#of.edges.conditions;
    const end = starts[arc + 1] ?? 0;
    for (let at = starts[arc] ?? 0; at < end; at += 1) {
      const node = entries[at] ?? 0;
      if (node !== except) this.literals.add(node, conditionValue(node));
    }
  }

  #explainRefuted(arc: number, entry: number): void {
    const { edges, trail } = this.#of;
    const limit = (edges.head[arc] ?? 0) ^ 1;
    const upper = trail.boundBefore(limit, entry);
    // The edge would raise the head to more than its upper bound allows: one more is enough.
    this.literals.add(edges.tail[arc] ?? 0, 1 - upper - (edges.least[arc] ?? 0));
    this.literals.add(limit, upper);
    this.#addConditions(arc, (trail.node[entry] ?? 0) ^ 1);
  }

  /** Why more than there is of a resource is taken at that moment. */
  explainClash(resource: number, moment: number): void {
    this.literals.count = 0;
    this.#takers.explainClash(resource, moment);
  }

  /** Why the parts of a resource need more of a span than there is. */
  explainOverload(resource: number, begin: number, finish: number): void {
    this.literals.count = 0;
    this.#takers.explainOverload(resource, begin, finish);
  }

  /** Why the variable of the newest entry has no value left: the entry's reason and what it runs against. */
  explainEmpty(): void {
    const { trail } = this.#of;
    const entry = trail.size - 1;
    const value = trail.after[entry] ?? 0;
    this.explain(entry, value);
    this.literals.add((trail.node[entry] ?? 0) ^ 1, 1 - value);
  }
}
