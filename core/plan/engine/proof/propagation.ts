import { Edges } from "./edges.ts";
import type { Explainer } from "./explain.ts";
import type { Model } from "./model.ts";
import { Nogoods } from "./nogoods.ts";
import { Parts, Profile } from "./profile.ts";
import type { Propagators } from "./propagators.ts";
import { Spans } from "./spans.ts";
import { Because, Trail } from "./trail.ts";

/** Of all work, the most that may go into spans below the root. */
const SPAN_SHARE = 0.3;
const FRESH = 0;
const STALE = 1;

/** What a contradiction is about: a variable without a value, a moment, or a span of a resource. */
type Trouble = "variable" | "moment" | "span";

/** By variable: the resources that must be looked at again when its bounds change. */
function resourcesOf(model: Model): readonly (readonly number[])[] {
  const resources = Array.from({ length: model.variables }, () => new Set<number>());
  for (const part of model.parts) {
    resources[part.variable]?.add(part.resource);
    if (part.condition >= 0) resources[part.condition >> 1]?.add(part.resource);
  }
  return resources.map((set) => [...set]);
}

/** All propagation, the cheap before the dear: edges and nogoods, then moments, then spans. */
export class Propagation {
  readonly of: Propagators;
  readonly #model: Model;
  readonly #spans: readonly (Spans | null)[];
  readonly #resourcesOf: readonly (readonly number[])[];
  /** By resource: whether its profile, and whether its spans must be looked at again. */
  readonly #profileState: Uint8Array;
  readonly #spanState: Uint8Array;
  /** How much was looked at so far: steps that each take about as long, for callers who share time out without a clock. */
  work = 0;
  #spanWork = 0;
  /** Entries of the trail from here on have not been told to edges and nogoods. */
  #head = 0;
  #trouble: Trouble = "variable";
  #troubled = 0;

  constructor(model: Model) {
    this.#model = model;
    const trail = new Trail(model.lower, model.upper);
    const parts = new Parts(model.parts);
    const profiles = model.capacities.map((capacity, resource) => {
      const own = model.parts.flatMap((part, index) => (part.resource === resource ? [index] : []));
      return own.length === 0 ? null : new Profile(trail, parts, own, capacity);
    });
    const edges = new Edges(trail, model.edges);
    this.of = { trail, edges, nogoods: new Nogoods(trail), parts, profiles };
    this.#spans = profiles.map((profile) => (profile === null ? null : new Spans(trail, parts, profile)));
    this.#resourcesOf = resourcesOf(model);
    this.#profileState = new Uint8Array(profiles.length).fill(STALE);
    this.#spanState = new Uint8Array(profiles.length).fill(STALE);
  }

  /** Takes in what holds from the start; false if that is a contradiction. */
  begin(): boolean {
    const { trail, nogoods, edges } = this.of;
    for (const literals of this.#model.nogoods) {
      const [node, value] = literals;
      if (node === undefined || value === undefined) continue;
      if (literals.length > 2) nogoods.add(literals, literals.length, 0, 0);
      else if (!trail.raise(node ^ 1, 1 - value, Because.choice)) return false;
    }
    nogoods.keepAll();
    return edges.checkEverything() && this.run();
  }

  /** After the trail went back: what has changed since is not looked at. */
  rewound(): void {
    this.#head = Math.min(this.#head, this.of.trail.size);
  }

  /** To the fixed point of everything; false at a contradiction. */
  run(): boolean {
    while (true) {
      this.#trouble = "variable";
      if (!this.#tell()) return false;
      const profile = this.#profileState.indexOf(STALE);
      const span = profile < 0 ? this.#spanState.indexOf(STALE) : -1;
      if (profile < 0 && span < 0) return true;
      const outcome = profile < 0 ? this.#checkSpans(span) : this.#checkProfile(profile);
      if (outcome > 0) continue;
      if (outcome < 0) this.#trouble = profile < 0 ? "span" : "moment";
      this.#troubled = profile < 0 ? span : profile;
      return false;
    }
  }

  #tell(): boolean {
    const { trail, edges, nogoods } = this.of;
    while (this.#head < trail.size) {
      const at = this.#head;
      this.#head += 1;
      this.work += 1;
      const node = trail.node[at] ?? 0;
      this.#makeStale(node >> 1);
      if (!edges.onRaise(node)) return false;
      if (!nogoods.onRaise(node, trail.before[at] ?? 0, trail.after[at] ?? 0)) return false;
    }
    return true;
  }

  #makeStale(variable: number): void {
    const resources = this.#resourcesOf[variable];
    if (resources === undefined) return;
    for (let index = 0; index < resources.length; index += 1) {
      const resource = resources[index] ?? 0;
      this.#profileState[resource] = STALE;
      this.#spanState[resource] = STALE;
    }
  }

  #checkProfile(resource: number): number {
    this.#profileState[resource] = FRESH;
    if (this.#model.settled.has(resource)) return 1;
    const profile = this.#of(resource);
    this.work += (profile?.own.length ?? 0) / 8;
    return profile?.propagate() ?? 1;
  }

  #of(resource: number): Profile | null {
    return this.of.profiles[resource] ?? null;
  }

  /** Spans pay where only one part fits at a time; elsewhere they cost more than they save, except at the root. */
  #checkSpans(resource: number): number {
    this.#spanState[resource] = FRESH;
    const isRoot = this.of.trail.depth === 0;
    if (!isRoot && (!this.#model.settled.has(resource) || this.#spanWork > this.work * SPAN_SHARE)) return 1;
    const parts = this.#of(resource)?.own.length ?? 0;
    const work = (parts * parts) / 32;
    this.work += work;
    if (!isRoot) this.#spanWork += work;
    return this.#spans[resource]?.propagate() ?? 1;
  }

  /** After `run` said false: lets the explainer tell literals that contradict each other. */
  explainTrouble(explainer: Explainer): void {
    const spans = this.#spans[this.#troubled];
    switch (this.#trouble) {
      case "variable":
        return explainer.explainEmpty();
      case "moment":
        return explainer.explainClash(this.#troubled, this.#of(this.#troubled)?.clash ?? 0);
      case "span":
        return explainer.explainOverload(this.#troubled, spans?.clashBegin ?? 0, spans?.clashFinish ?? 0);
    }
  }
}
