import type { Amount, Measured } from "./amount.ts";
import { measured } from "./amount.ts";
import { convert } from "./measures.ts";
import { add, rational } from "./rational.ts";

/**
 * Exact sums: amounts of one sort (masses, volumes, the same countable) in one figure, in the unit that came first;
 * what cannot be added stays apart. "To taste" adds nothing and is kept once.
 */
export function sumAmounts(amounts: readonly Amount[]): readonly Amount[] {
  const sums: Measured[] = [];
  for (const amount of amounts) {
    if (amount.kind === "to-taste") continue;
    const at = sums.findIndex(({ unit }) => convert(amount, unit).ok);
    const sum = sums[at];
    const like = sum === undefined ? null : convert(amount, sum.unit);
    if (sum === undefined || like?.ok !== true) sums.push(amount);
    else sums[at] = plusAmount(sum, like.value);
  }
  const isTasted = amounts.some(({ kind }) => kind === "to-taste");
  return isTasted ? [...sums, { kind: "to-taste" }] : sums;
}

const plusAmount = (a: Measured, b: Measured): Measured =>
  measured(add(rational(a.low), rational(b.low)), a.unit, add(rational(a.high), rational(b.high)));

/** Whether two lists of sums say the same. */
export const sameAmounts = (a: readonly Amount[], b: readonly Amount[]): boolean =>
  JSON.stringify(a) === JSON.stringify(b);
