import type { Instant } from "../units/quantity.ts";
import type { Leftover } from "./leftover.ts";

/**
 * How it stands with something that is left. `good`: to be eaten. `past-best`: frozen for long; it stays safe, only its
 * taste suffers (USDA FSIS, Freezing and Food Safety; from memory). `spent`: past its day. `heated`: to be eaten now.
 * `heated-long`: heated more than two hours ago. What is `spent` or `heated-long` is to be thrown away.
 */
export type Standing = "good" | "past-best" | "spent" | "heated" | "heated-long";

/** How it stands with it at a moment. */
export function standingOf(
  { place, useBy, heatedAt }: Pick<Leftover, "place" | "useBy" | "heatedAt">,
  now: Instant,
): Standing {
  if (heatedAt !== null) return useBy >= now ? "heated" : "heated-long";
  if (useBy >= now) return "good";
  return place === "freezer" ? "past-best" : "spent";
}

/** Whether it is cold and may still be eaten. */
export function isToEat(leftover: Pick<Leftover, "place" | "useBy" | "heatedAt">, now: Instant): boolean {
  const standing = standingOf(leftover, now);
  return standing === "good" || standing === "past-best";
}

/** What is left, the first to use first. */
export const firstToUse = (leftovers: ReadonlyMap<string, Leftover>): readonly Leftover[] =>
  [...leftovers.values()].toSorted((a, b) => a.useBy - b.useBy);
