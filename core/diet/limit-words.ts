import type { Nutrient } from "../food/nutrients.ts";
import type { ValueRule } from "./diet.ts";
import { heldLimits, limitedBy, type Held, type HeldLimit } from "./held-limits.ts";

/** Where a limit is looked for. @param dish of a serving, whose */
export interface Where {
  readonly scope: ValueRule["in"];
  readonly dish: string | null;
}

function words({ state, limit, why }: HeldLimit): readonly string[] {
  switch (state) {
    case "kept":
      return [`That keeps to ${limit}.`];
    case "open":
      return [`${limit}.`];
    case "broken":
    case "cannot tell":
      return why;
  }
}

/** What the diets that hold say to how much of a value there is, a sentence for each limit. */
export const limitWords = (nutrient: Nutrient, { scope, dish }: Where, held: Held): readonly string[] =>
  heldLimits(held, (rule) => rule.in === scope && limitedBy(rule) === nutrient)
    .filter((one) => one.dish === dish)
    .flatMap(words);
