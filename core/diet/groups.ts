import type { FoodTable } from "../food/food.ts";

/**
 * What a food has to do with a group: it is of it, is made with it, may be made with it (the packet tells), is free of
 * it as bought, or nobody here can say.
 */
export type Part = "is" | "has" | "may" | "free" | "unknown";

/** One group of foods. The names are as `normaliseFood` gives them. */
export interface FoodGroup {
  readonly name: string;
  readonly also: readonly string[];
  readonly is: ReadonlySet<string>;
  readonly has: ReadonlySet<string>;
  readonly may: ReadonlySet<string>;
}

/** The groups by every name they have, each as `normaliseFood` gives it. */
export type FoodGroups = ReadonlyMap<string, FoodGroup>;

/** What is known of foods. */
export interface Larder {
  readonly foods: FoodTable;
  readonly groups: FoodGroups;
}

/** What a group says of a name that it lists; null for a name that it does not list. */
export function listedPart(group: FoodGroup, name: string): "is" | "has" | "may" | null {
  if (group.is.has(name)) return "is";
  if (group.has.has(name)) return "has";
  return group.may.has(name) ? "may" : null;
}

/** Whether everything that is of the one is of the other, and not the other way round. */
export const isWithin = (inner: FoodGroup, outer: FoodGroup): boolean =>
  inner.is.size < outer.is.size && [...inner.is].every((name) => outer.is.has(name));
