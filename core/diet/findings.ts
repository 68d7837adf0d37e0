import type { DishId, IngredientId } from "../recipe/model.ts";

/** The three answers. "cannot tell" is no yes. */
export type Verdict = "allowed" | "cannot tell" | "not allowed";

/** What may be taken for an ingredient that a diet has something against. */
export interface StandIns {
  readonly dish: DishId;
  readonly ingredient: IngredientId;
  /** Each allowed by every diet; the recipe's own first. */
  readonly foods: readonly StandIn[];
}

/** One food that may be taken. */
export interface StandIn {
  /** As the swap names it: "lemon juice". */
  readonly use: string;
  /** How much of it and what else changes, as said: "Two teaspoons of lemon juice. Add it at the end …". */
  readonly how: string;
}

/** What a diet has against a meal, or cannot tell of it. */
export interface Finding {
  /** The diet's name. */
  readonly diet: string;
  /** The rule as the diet's file says it: "added salt: avoided". */
  readonly rule: string;
  /** The dish's name; null for what concerns the whole meal. */
  readonly dish: string | null;
  /** As in the recipe; null for a total. */
  readonly ingredient: string | null;
  readonly verdict: Exclude<Verdict, "allowed">;
  /** One sentence that can be said. */
  readonly why: string;
  /** How much there is of it, in words; null where nobody knows. */
  readonly howMuch: string | null;
  /** The diet's reason; null where its file gives none. */
  readonly because: string | null;
  /** What would mend it, one sentence; null where nothing is known that would. */
  readonly mend: string | null;
  /** null where it is about no ingredient, or nothing is known that may stand in. */
  readonly standIns: StandIns | null;
}

const RANK: Readonly<Record<Verdict, number>> = { allowed: 0, "cannot tell": 1, "not allowed": 2 };

/** The strictest of the answers; where there is none, nothing speaks against it. */
export const strictest = (verdicts: readonly Verdict[]): Verdict =>
  verdicts.reduce<Verdict>((worst, one) => (RANK[one] > RANK[worst] ? one : worst), "allowed");
