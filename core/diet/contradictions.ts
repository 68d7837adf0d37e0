import { compare } from "../units/rational.ts";
import type { Diet, DietName, FoodRule, ValueRule } from "./diet.ts";

/** Whether two names stand for the same food or group. */
export function isSame(a: DietName, b: DietName): boolean {
  if (a.kind === "group") return b.kind === "group" && a.group === b.group;
  if (a.kind === "food") return b.kind === "food" && a.food === b.food;
  return b.kind === "words" && a.words.some((word) => b.words.includes(word));
}

/** Who asks for something. */
const whose = (a: Diet, b: Diet): string => (a === b ? `${a.name} asks` : `${a.name} and ${b.name} ask`);

interface Of<T> {
  readonly diet: Diet;
  readonly rule: T;
}

function pairs<T>(all: readonly Of<T>[]): readonly (readonly [Of<T>, Of<T>])[] {
  return all.flatMap((a, index) => all.slice(index + 1).map((b): readonly [Of<T>, Of<T>] => [a, b]));
}

/** In two diets, what one allows and the other avoids is avoided and no contradiction; in one it is a slip. */
function foodClash(a: Of<FoodRule>, b: Of<FoodRule>): readonly string[] {
  if (a.diet !== b.diet || !isSame(a.rule.name, b.rule.name)) return [];
  return [
    `${a.diet.name} has two rules for the same food, "${a.rule.name.said}" and "${b.rule.name.said}"; keep one.`,
  ];
}

function valueClash(a: Of<ValueRule>, b: Of<ValueRule>): readonly string[] {
  const [one, other] = [a.rule, b.rule];
  if (one.kind === "claim" || other.kind === "claim" || one.kind === other.kind) return [];
  if (one.nutrient !== other.nutrient || one.in !== other.in) return [];
  const [least, most] = one.kind === "at least" ? [one, other] : [other, one];
  if (compare(least.figure, most.figure) <= 0) return [];
  const both = `at least ${least.written} and at most ${most.written} ${one.nutrient} in a ${one.in}`;
  return [`${whose(a.diet, b.diet)} for ${both}, which cannot both be; ask your clinician which holds.`];
}

function allergyClash(diet: Diet): readonly string[] {
  return diet.foods.flatMap((rule) =>
    rule.verdict === "allowed" && diet.allergies.some((one) => isSame(one, rule.name))
      ? [`${diet.name} allows "${rule.name.said}" and names it as an allergy; take it off one of them.`]
      : [],
  );
}

const isEmpty = (diet: Diet): boolean =>
  diet.listed === "only" && !diet.foods.some(({ verdict }) => verdict === "allowed");

/** What diets that hold at once say against each other, or one against itself, a sentence each. */
export function contradictions(diets: readonly Diet[]): readonly string[] {
  const foods = diets.flatMap((diet) => diet.foods.map((rule) => ({ diet, rule })));
  const values = diets.flatMap((diet) => diet.values.map((rule) => ({ diet, rule })));
  return [
    ...diets
      .filter(isEmpty)
      .map(({ name }) => `${name} allows only what is listed, and lists nothing as allowed.`),
    ...pairs(foods).flatMap(([a, b]) => foodClash(a, b)),
    ...pairs(values).flatMap(([a, b]) => valueClash(a, b)),
    ...diets.flatMap(allergyClash),
  ];
}
