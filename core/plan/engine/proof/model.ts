/**
 * What the search works on: whole-number variables with bounds, and constraints between them. Every variable x has two
 * nodes, 2x for its lower bound and 2x + 1 for the lower bound of -x, so that each literal of the whole search reads
 * "the bound of this node is at least v"; its opposite is "the bound of node ^ 1 is at least 1 - v".
 */
export interface Model {
  /** Acts come first (variable = act), then tending, the origin and the end; switches (0 or 1) follow. */
  readonly times: number;
  readonly variables: number;
  /** A time that is always 0. */
  readonly origin: number;
  /** Not before any act has ended; the one that is made small. */
  readonly end: number;
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly edges: readonly Edge[];
  readonly parts: readonly Part[];
  readonly capacities: readonly number[];
  /** Resources of which no two parts fit beside each other: the edges say so already. */
  readonly settled: ReadonlySet<number>;
  /** Literals (node, value, node, value, ...) that never hold all at once. */
  readonly nogoods: readonly (readonly number[])[];
  /** The variable of each tending of each act. */
  readonly tended: readonly (readonly number[])[];
  /** The switch of each baking of each act; empty where there are fewer than two. */
  readonly choices: readonly (readonly number[])[];
}

/** `to >= from + least`, where from and to are variables, as soon as all conditions hold. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  /** Nodes of switches: 2s reads "s is 1", 2s + 1 reads "s is 0". */
  readonly conditions: readonly number[];
}

/** So much of a resource while time runs in [variable + from, variable + to). */
export interface Part {
  readonly resource: number;
  readonly variable: number;
  readonly amount: number;
  readonly from: number;
  readonly to: number;
  /** The node of a switch, or -1 where the part always counts. */
  readonly condition: number;
}

/** The bound that makes the condition (a switch's node) true. */
export function conditionValue(node: number): number {
  return 1 - (node & 1);
}

/** A model that is being put together. */
export interface Draft {
  readonly lower: number[];
  readonly upper: number[];
  readonly edges: Edge[];
  readonly parts: Part[];
  readonly nogoods: number[][];
}

/** Adds a variable and tells its number. */
export function addVariable(draft: Draft, lower: number, upper: number): number {
  draft.lower.push(lower);
  draft.upper.push(upper);
  return draft.lower.length - 1;
}

/** Adds `to >= from + least`, always or under conditions. */
export function addEdge(
  draft: Draft,
  from: number,
  to: number,
  least: number,
  conditions: readonly number[] = [],
): void {
  draft.edges.push({ from, to, least, conditions });
}
