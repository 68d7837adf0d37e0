import type { MealCheck } from "../../core/diet/check.ts";
import type { Verdict } from "../../core/diet/findings.ts";
import { checkCaution } from "./check-words.ts";

type VerdictJson = "allowed" | "cannot-tell" | "not-allowed";
const verdictJson = (verdict: Verdict): VerdictJson => verdict.replace(" ", "-") as VerdictJson;

/** What the diets say of a meal, for another program. */
export interface MealCheckJson {
  readonly meal: string;
  readonly diets: readonly string[];
  readonly verdict: VerdictJson;
  readonly caution: string;
  readonly findings: readonly {
    readonly diet: string;
    readonly rule: string;
    readonly dish: string | null;
    /** null: it is about a total. */
    readonly ingredient: string | null;
    readonly verdict: VerdictJson;
    readonly why: string;
    readonly howMuch: string | null;
    readonly because: string | null;
    readonly mend: string | null;
    /** Foods that may be taken in its place, as `--instead` names them. */
    readonly standIns: readonly string[];
  }[];
  readonly ingredients: readonly {
    readonly dish: string;
    readonly ingredient: string;
    readonly verdict: VerdictJson;
  }[];
  readonly notes: readonly string[];
}

/** The check as `check --json` prints it. */
export const checkJson = ({
  meal,
  diets,
  verdict,
  findings,
  ingredients,
  notes,
}: MealCheck): MealCheckJson => ({
  meal: meal.id,
  diets: diets.map(({ id }) => id),
  verdict: verdictJson(verdict),
  caution: checkCaution,
  findings: findings.map((one) => ({
    ...one,
    verdict: verdictJson(one.verdict),
    standIns: one.standIns?.foods.map(({ use }) => use) ?? [],
  })),
  ingredients: ingredients.map((one) => ({ ...one, verdict: verdictJson(one.verdict) })),
  notes,
});
