import type { Measured } from "../units/amount.ts";
import type { Rational } from "../units/rational.ts";
import type { Seconds } from "../units/quantity.ts";

/** How much to take: a factor of the amount in its own unit, or so much for so much. */
export type Ratio =
  | { readonly kind: "factor"; readonly factor: Rational }
  | { readonly kind: "each"; readonly take: Measured; readonly for: Measured };

/** One swap of the table. The foods that it is for, and what it adds, are main names of the table of foods. */
export interface SwapRule {
  readonly title: string;
  readonly for: readonly string[];
  /** As spoken: "brown lentils". */
  readonly use: string;
  readonly take: Ratio;
  /** What else goes in, for the amount that is replaced; null: nothing. */
  readonly add: { readonly food: string; readonly take: Ratio } | null;
  /** How much longer (below nought: shorter) what it goes into cooks; 0: as long. */
  readonly longer: Seconds;
  /** null: nothing else changes. */
  readonly effect: string | null;
}
