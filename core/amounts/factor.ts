import { readIngredientLine } from "../food/ingredient-line.ts";
import { knownIngredient } from "../food/ingredient-food.ts";
import { matchName, type NameMatch } from "../food/name-match.ts";
import type { FoodTable } from "../food/food.ts";
import type { Dish, Ingredient } from "../recipe/model.ts";
import { listed } from "../recipe/nearest.ts";
import { MOST_SERVINGS } from "../recipe/scale.ts";
import { measured, type Measured } from "../units/amount.ts";
import { convert } from "../units/measures.ts";
import { compare, div, mul, parseRational, ratio, rational, ZERO, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";

/** Less than this of one serving is no meal. */
const LEAST_SERVINGS = ratio(1, 4);

/** Servings that a dish makes when it is made `factor` times. */
export const servingsOf = (dish: Dish, factor: Rational): Rational => mul(ratio(dish.yield.servings), factor);

/** The factor, where so much of the dish can be made at all. Error: one sentence. */
export function makeable(dish: Dish, factor: Rational): Result<Rational, string> {
  const servings = servingsOf(dish, factor);
  if (compare(servings, ratio(MOST_SERVINGS)) > 0)
    return err(
      `That is more than ${MOST_SERVINGS} servings of ${dish.name}; no home kitchen makes so much at once.`,
    );
  if (compare(servings, LEAST_SERVINGS) < 0)
    return err(`That is less than a quarter of a serving of ${dish.name}; it is too little to make.`);
  return ok(factor);
}

/** "1 1/2", "0.75": how many times a dish is to be made. Error: one sentence. */
export function readFactor(text: string): Result<Rational, string> {
  const written = text.trim();
  if (/^[-−]/.test(written)) return err(`"${text}" is less than nothing; write a number above nought.`);
  const factor = parseRational(written.replace(/(?<=\d),(?=\d{3}(?!\d))/g, ""));
  if (!factor.ok) return err(`"${text}" is no number of times; write it like 2, 1.5 or 1 1/2.`);
  return factor.value === ZERO ? err("Nothing can be made no times; write a number above nought.") : factor;
}

const atLeast = (amount: Measured): Measured => measured(rational(amount.low), amount.unit);

/** What an amount of an ingredient weighs, in grams; where it is not sure, the end that is asked for. */
function gramsOf(
  table: FoodTable,
  ingredient: Ingredient,
  amount: Measured,
  end: "low" | "high",
): Result<Rational, string> {
  const isOwn = amount === ingredient.amount;
  const known = knownIngredient(table, {
    ...ingredient,
    amount: atLeast(amount),
    weighs: isOwn ? ingredient.weighs : null,
  });
  if (!known.ok) return known;
  return known.value.weight.ok ? ok(known.value.weight.value[end]) : known.value.weight;
}

/** What is in the house over what the dish takes, so that it is enough whatever is not sure. */
export function shareOf(
  table: FoodTable,
  ingredient: Ingredient,
  need: Measured,
  have: Measured,
): Result<Rational, string> {
  const same = convert(have, need.unit);
  if (same.ok) return ok(div(rational(same.value.low), rational(need.low)));
  const [own, wanted] = [gramsOf(table, ingredient, have, "low"), gramsOf(table, ingredient, need, "high")];
  if (!own.ok) return own;
  return wanted.ok ? ok(div(own.value, wanted.value)) : wanted;
}

/** What is in the house of one ingredient, and how many times the dish can be made of it. */
export interface Having {
  readonly ingredient: Ingredient;
  readonly have: Measured;
  readonly factor: Rational;
}

/** "Water for the onion" is no onion: what something is for is asked last. */
function matchIn(items: readonly string[], item: string): NameMatch {
  const plain = items.filter((one) => !/\sfor\s/i.test(one));
  const match = matchName(item, plain);
  return match.kind === "none" ? matchName(item, items) : match;
}

function ingredientMeant(dish: Dish, item: string): Result<Ingredient, string> {
  const items = dish.ingredients.map((one) => one.item);
  const match = matchIn(items, item);
  const name = match.kind === "exact" ? match.name : null;
  const ingredient = dish.ingredients.find((one) => one.item === name);
  if (ingredient !== undefined) return ok(ingredient);
  return match.kind === "several"
    ? err(`"${item}" may be ${listed(match.names, "or")} in ${dish.name}; say which.`)
    : err(`${dish.name} takes no "${item}"; it takes ${listed(items)}.`);
}

/**
 * "300 g red lentils": the most of a dish that can be made of what is in the house, exactly. Where a weight is not sure,
 * as much as it is enough for in any case.
 * Error: one sentence.
 */
export function readHaving(dish: Dish, text: string, table: FoodTable): Result<Having, string> {
  const line = readIngredientLine(text);
  if (!line.ok) return line;
  const { amount: have, item } = line.value;
  if (item === null || have.kind === "to-taste")
    return err(`"${text}" does not say how much there is of what; write it like 300 g red lentils.`);
  const meant = ingredientMeant(dish, item);
  if (!meant.ok) return meant;
  const ingredient = meant.value;
  const need = ingredient.amount;
  if (need.kind === "to-taste")
    return err(`${dish.name} takes ${ingredient.item} to taste, so that sets no amount.`);
  const factor = shareOf(table, ingredient, need, have);
  const made = factor.ok ? makeable(dish, factor.value) : factor;
  return made.ok ? ok({ ingredient, have, factor: made.value }) : made;
}
