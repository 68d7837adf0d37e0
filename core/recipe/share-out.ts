import type { Amount, Measured } from "../units/amount.ts";
import { formatAmount, measured } from "../units/amount.ts";
import { convert } from "../units/measures.ts";
import { ZERO, abs, add, compare, rational, sub } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import type { Draft, Finding } from "./draft.ts";
import { itemOf } from "./draft.ts";
import type { IngredientFile, UseFile } from "./dish-file.ts";
import { nearest } from "./nearest.ts";

/** Where an ingredient goes in, in the order of the steps. */
interface Taking extends UseFile {
  readonly step: string;
}

/** How the listed amounts go out to the steps: step -> ingredient -> amount. */
export interface Shares {
  readonly amounts: ReadonlyMap<string, ReadonlyMap<string, Amount>>;
  readonly findings: readonly Finding[];
}

function takings(draft: Draft): readonly Taking[] {
  return [...draft.steps].flatMap(([step, file]) => (file?.with ?? []).map((use) => ({ ...use, step })));
}

function sumOf(amounts: readonly Measured[]): readonly [Rational, Rational] {
  return amounts.reduce<readonly [Rational, Rational]>(
    ([low, high], amount) => [add(low, rational(amount.low)), add(high, rational(amount.high))],
    [ZERO, ZERO],
  );
}

const withPath = ({ step, ingredient }: Taking): Finding["path"] => ["steps", step, "with", ingredient];

/** The taken amount in the listed unit, exactly: four tablespoons of a listed quarter cup. */
function inListedUnit(listed: Measured, amount: Amount): Measured | null {
  const converted = convert(amount, listed.unit);
  return converted.ok ? converted.value : null;
}

function mismatch(listed: Measured, taken: Taking, item: string): Finding | null {
  const { amount } = taken;
  if (amount === null || inListedUnit(listed, amount) !== null) return null;
  const path = withPath(taken);
  if (amount.kind === "to-taste") {
    const advice = "write an amount here, or list it to taste.";
    return { path, sentence: `${item} is listed as ${formatAmount(listed)}, not to taste; ${advice}` };
  }
  const pair = `${formatAmount(listed)} but used as ${formatAmount(amount)}`;
  return { path, sentence: `${item} is listed as ${pair}; use units of the same kind in both places.` };
}

/** What the steps take against what is listed; null when it comes out even. */
function balance(listed: Measured, low: Rational, high: Rational, item: string, id: string): Finding | null {
  const byLow = sub(low, rational(listed.low));
  const over = compare(byLow, ZERO) === 0 ? sub(high, rational(listed.high)) : byLow;
  if (compare(over, ZERO) === 0) return null;
  const difference = formatAmount(measured(abs(over), listed.unit));
  const sum = formatAmount(measured(low, listed.unit, high));
  const whole = formatAmount(listed);
  const path = ["ingredients", id];
  if (compare(over, ZERO) > 0) {
    return {
      path,
      sentence: `The steps use ${sum} of ${item} but ${whole} is listed: ${difference} too much; change one of the amounts.`,
    };
  }
  return {
    path,
    sentence: `The steps use only ${sum} of the ${whole} of ${item}: ${difference} is left over; change one of the amounts.`,
  };
}

interface Share {
  readonly amounts: readonly (readonly [step: string, amount: Amount])[];
  readonly findings: readonly Finding[];
}

function shareToTaste(takers: readonly Taking[], item: string): Share {
  const findings = takers
    .filter(({ amount }) => amount !== null && amount.kind !== "to-taste")
    .map((taken) => ({
      path: withPath(taken),
      sentence: `${item} is listed to taste, so a step cannot take an exact amount of it; list the amount instead.`,
    }));
  return { amounts: takers.map(({ step }) => [step, { kind: "to-taste" }] as const), findings };
}

/** The part of a measured ingredient that is left for the one step that takes the rest. */
function shareRest(
  listed: Measured,
  exact: readonly Measured[],
  rest: Taking,
  item: string,
): Amount | Finding {
  const [low, high] = sumOf(exact);
  const left = [sub(rational(listed.low), low), sub(rational(listed.high), high)] as const;
  if (compare(left[0], ZERO) > 0 && compare(left[0], left[1]) <= 0)
    return measured(left[0], listed.unit, left[1]);
  return {
    path: withPath(rest),
    sentence: `Nothing is left of the ${formatAmount(listed)} of ${item} for this step; the other steps use it up.`,
  };
}

function shareMeasured(id: string, listed: Measured, takers: readonly Taking[], item: string): Share {
  const wrong = takers.map((taken) => mismatch(listed, taken, item)).filter((found) => found !== null);
  if (wrong.length > 0) return { amounts: [], findings: wrong };
  const exact = takers.flatMap(({ step, amount }) =>
    amount?.kind === "measured" ? [[step, amount] as const] : [],
  );
  const [rest, second] = takers.filter(({ amount }) => amount === null);
  if (rest !== undefined && second !== undefined) {
    const sentence = `Two steps take all that is left of ${item}; write an amount at one of them.`;
    return { amounts: exact, findings: [{ path: withPath(second), sentence }] };
  }
  const figures = exact.flatMap(([, amount]) => inListedUnit(listed, amount) ?? []);
  if (rest === undefined) {
    const found = balance(listed, ...sumOf(figures), item, id);
    return { amounts: exact, findings: found === null ? [] : [found] };
  }
  const left = shareRest(listed, figures, rest, item);
  if ("sentence" in left) return { amounts: exact, findings: [left] };
  return { amounts: [...exact, [rest.step, left]], findings: [] };
}

function unlisted(draft: Draft, taken: Taking): Finding {
  const meant = nearest(taken.ingredient, [...draft.ingredients.keys()]);
  const advice = meant === null ? "add it to the ingredients." : `did you mean "${meant}"?`;
  return { path: withPath(taken), sentence: `"${taken.ingredient}" is used here but not listed; ${advice}` };
}

function share(id: string, file: IngredientFile, takers: readonly Taking[]): Share {
  const item = itemOf(id, file);
  if (takers.length === 0) {
    const sentence = `"${id}" is listed but no step uses it; add it to the "with" of a step, or take it off the list.`;
    return { amounts: [], findings: [{ path: ["ingredients", id], sentence }] };
  }
  if (file.amount.kind === "to-taste") return shareToTaste(takers, item);
  return shareMeasured(id, file.amount, takers, item);
}

/** Gives every step its amounts, and finds where the sums do not come out. Exact, whatever the fractions. */
export function shareOut(draft: Draft): Shares {
  const all = takings(draft);
  const hasBrokenStep = [...draft.steps.values()].includes(null);
  const findings: Finding[] = all
    .filter(({ ingredient }) => !draft.ingredients.has(ingredient))
    .map((taken) => unlisted(draft, taken));
  const amounts = new Map<string, Map<string, Amount>>();
  for (const [id, file] of draft.ingredients) {
    // A step that could not be read may take what seems to be missing: no sums then.
    if (file === null || hasBrokenStep) continue;
    const shared = share(
      id,
      file,
      all.filter(({ ingredient }) => ingredient === id),
    );
    findings.push(...shared.findings);
    for (const [step, amount] of shared.amounts) {
      amounts.set(step, (amounts.get(step) ?? new Map<string, Amount>()).set(id, amount));
    }
  }
  return { amounts, findings };
}
