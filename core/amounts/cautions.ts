import type { Dish, Ingredient, Step } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import { scaleBatch, scaledList } from "../recipe/scale.ts";
import { minutes } from "../units/quantity.ts";
import { compare, ratio, rational, toNumber, type Rational } from "../units/rational.ts";
import { eggFigure, splitsEggs } from "./egg-words.ts";

/** What does not grow in the same measure as the amounts. */
export type NotLinear =
  "times" | "work" | "liquid" | "raising" | "strength" | "pan" | "crowding" | "turns" | "cooling" | "eggs";

/** One sentence about it, to be said or read. */
export interface ScaleCaution {
  readonly about: NotLinear;
  readonly sentence: string;
}

/** From here on it makes a difference (common practice, no source). */
const [LARGER, SMALLER, STRONG] = [ratio(3, 2), ratio(2, 3), ratio(2)];
const AWHILE = minutes(5);

const SPICE =
  /\b(?:salt|pepper|peppercorns?|chil(?:i|e|li|es|ies)|cayenne|paprika|cumin|cinnamon|cloves?(?! of)|nutmeg|mace|allspice|cardamom|turmeric|mustard|ginger|curry|coriander seeds?|star anise|fennel seeds?|saffron|vanilla|rosemary|sage|thyme|oregano|bay)\b/i;
const RAISING = /\b(?:baking powder|baking soda|bicarbonate|yeast|sourdough)\b/i;
const LIQUID = /\b(?:water|stock|broth|juice|wine|milk|drink|cider)\b/i;

interface Scaled {
  readonly dish: Dish;
  readonly factor: Rational;
  readonly isLarger: boolean;
  readonly isSmaller: boolean;
}

type Rule = (scaled: Scaled) => readonly ScaleCaution[];

const onHeat = ({ needs }: Step): boolean => needs.some(({ kind }) => kind === "burner");
const inOven = ({ needs }: Step): boolean => needs.some(({ kind }) => kind === "oven");
const titles = (steps: readonly Step[]): string => listed(steps.map(({ title }) => `"${title}"`));
const items = (all: readonly Ingredient[]): string => listed(all.map(({ item }) => item));
const told = (about: NotLinear, sentence: string): readonly ScaleCaution[] => [{ about, sentence }];

const times: Rule = ({ dish, isLarger, isSmaller }) => {
  const slow = dish.steps.filter(
    (step) =>
      step.hands === "off" &&
      step.batch === null &&
      step.time.high >= AWHILE &&
      (onHeat(step) || inOven(step)),
  );
  if (slow.length === 0) return [];
  if (isLarger)
    return told(
      "times",
      `A larger amount heats through more slowly: go by the look of it, not the clock, at ${titles(slow)}.`,
    );
  return isSmaller ? told("times", `A smaller amount is done sooner: look early at ${titles(slow)}.`) : [];
};

const work: Rule = ({ dish, isLarger }) => {
  const long = dish.steps.filter(
    (step) => step.hands === "on" && !onHeat(step) && !inOven(step) && step.time.high >= AWHILE,
  );
  return isLarger && long.length > 0
    ? told("work", `Work by hand grows with the amount, and the plan does not know it: ${titles(long)}.`)
    : [];
};

const liquid: Rule = ({ dish, isLarger, isSmaller }) => {
  const liquids = new Set(dish.ingredients.filter(({ item }) => LIQUID.test(item)).map(({ id }) => id));
  const boiling = dish.steps.filter(
    (step) =>
      onHeat(step) && step.hands === "off" && step.uses.some(({ ingredient }) => liquids.has(ingredient)),
  );
  if (boiling.length === 0) return [];
  if (isLarger)
    return told(
      "liquid",
      `Less boils away for each serving: hold some of the liquid back at ${titles(boiling)}, and add it when it is wanted.`,
    );
  return isSmaller
    ? told("liquid", `A thin layer boils dry sooner: keep a little more water at hand at ${titles(boiling)}.`)
    : [];
};

const raising: Rule = ({ dish, isLarger, isSmaller }) => {
  const raised = dish.ingredients.filter(({ item }) => RAISING.test(item));
  return raised.length > 0 && (isLarger || isSmaller)
    ? told(
        "raising",
        `What raises a dough does not grow evenly: go by how it rises, not by the figure for ${items(raised)} alone.`,
      )
    : [];
};

const strength: Rule = ({ dish, factor }) => {
  const strong = dish.ingredients.filter(
    ({ item, amount }) => amount.kind === "measured" && SPICE.test(item),
  );
  return strong.length > 0 && compare(factor, STRONG) >= 0
    ? told(
        "strength",
        `Spice grows stronger than its amount: begin with three quarters of the ${items(strong)}, taste, then add the rest.`,
      )
    : [];
};

const figure = (factor: Rational): string => String(Math.round(toNumber(factor) * 10) / 10);

const pan: Rule = ({ dish, factor, isLarger, isSmaller }) => {
  const baked = dish.steps.filter((step) => inOven(step) && step.batch === null);
  return baked.length > 0 && (isLarger || isSmaller)
    ? told(
        "pan",
        `Take ${figure(factor)} times the area of pan or tray at ${titles(baked)}; heaped deeper it takes longer and browns less.`,
      )
    : [];
};

const crowding: Rule = ({ dish, isLarger }) => {
  const browned = dish.steps.filter(
    (step) => onHeat(step) && step.batch === null && /\b(?:brown|sear|fry|saut[eé])\b/i.test(step.do),
  );
  return isLarger && browned.length > 0
    ? told("crowding", `Brown in several turns, in one layer: a crowded pot steams, at ${titles(browned)}.`)
    : [];
};

const turns: Rule = ({ dish, factor }) =>
  dish.steps.flatMap((step): readonly ScaleCaution[] => {
    const batch = scaleBatch(step.batch, factor);
    if (step.batch === null || batch === null) return [];
    const [before, after] = [step.batch, batch].map(({ of, holds }) => Math.ceil(of / holds));
    return before === after
      ? []
      : told(
          "turns",
          `${batch.of} ${batch.pieces} with ${batch.holds} at a time make ${after ?? 0} turns instead of ${before ?? 0} at "${step.title}".`,
        );
  });

const cooling: Rule = ({ dish, isLarger }) => {
  const cooled = dish.steps.filter(
    ({ needs, do: what }) => needs.some(({ kind }) => kind === "fridge") || /\bcool\b/i.test(what),
  );
  return isLarger && cooled.length > 0
    ? told(
        "cooling",
        `A large amount cools slowly, and spoils meanwhile: spread it shallow, into the fridge within two hours, at ${titles(cooled)}.`,
      )
    : [];
};

const eggs: Rule = ({ dish, factor }) =>
  scaledList(dish.ingredients, factor).flatMap((one) => {
    const { amount } = one;
    return splitsEggs(one) && amount.kind === "measured"
      ? told(
          "eggs",
          `${eggFigure(rational(amount.high))} eggs do not come out even: beat one more, and measure.`,
        )
      : [];
  });

const RULES: readonly Rule[] = [times, work, liquid, raising, strength, pan, crowding, turns, cooling, eggs];

/**
 * What does not grow with the amounts, for a dish that is made `factor` times: only what concerns its own steps and
 * ingredients. Common practice, no source.
 */
export function scaleCautions(dish: Dish, factor: Rational): readonly ScaleCaution[] {
  const isLarger = compare(factor, LARGER) >= 0;
  const isSmaller = compare(factor, SMALLER) <= 0;
  return RULES.flatMap((rule) => rule({ dish, factor, isLarger, isSmaller }));
}
