import { spokenAmount } from "../units/amount-words.ts";
import type { Allowance, DietName, FoodRule, ValueRule } from "./diet.ts";

const TIMES: readonly string[] = ["never", "once", "twice"];

/** "once a week", "at most 30 grams a day". */
export function allowanceWords(allowance: Allowance): string {
  if (allowance.kind === "amount") return `at most ${spokenAmount(allowance.amount)} a ${allowance.every}`;
  const often = TIMES[allowance.times] ?? `${allowance.times} times`;
  return `at most ${often} a ${allowance.every}`;
}

/** A rule on one line: "grains: at most once a week", "milk products: only nonfat". */
export function foodRuleWords({ name, verdict, allowance, only, these }: FoodRule): string {
  const parts = [
    ...(allowance === null ? [] : [allowanceWords(allowance)]),
    ...(only === null ? [] : [`only ${only}`]),
    ...(these === null ? [] : [`only ${these.map(({ said }) => said).join(", ")}`]),
  ];
  return `${name.said}: ${parts.length === 0 ? verdict : parts.join("; ")}`;
}

const SCOPES = { serving: "a serving", meal: "the meal", day: "a day" } as const;

/** A limit on one line: "sodium: at most 140 mg in a serving". */
export function valueRuleWords(rule: ValueRule): string {
  return rule.kind === "claim"
    ? `${rule.claim.says} in ${SCOPES[rule.in]}`
    : `${rule.nutrient}: ${rule.kind} ${rule.written} in ${SCOPES[rule.in]}`;
}

/** "allergy: sesame". */
export const allergyWords = ({ said }: DietName): string => `allergy: ${said}`;
