import { normaliseFood } from "../food/names.ts";
import { spokenIngredient } from "../food/ingredient-words.ts";
import type { Ratio, SwapRule } from "../food/swap-rule.ts";
import type { CookingMeal, Dish, Ingredient, Swap } from "../recipe/model.ts";
import { measured, scaleAmount, type Amount, type Measured } from "../units/amount.ts";
import { convert } from "../units/measures.ts";
import { add, div, mul, rational } from "../units/rational.ts";
import type { Unit } from "../units/unit.ts";
import type { Diet } from "./diet.ts";
import type { Larder } from "./groups.ts";
import { isAllowed } from "./judge-food.ts";
import { kindOf } from "./kind.ts";
import { plainerSwap } from "./plainer.ts";

/** So many are offered for one ingredient besides the recipe's own: more cannot be told in a breath. */
const MOST = 2;

/** What is known of foods and of what stands in for them. */
export interface SwapTable {
  readonly rules: readonly SwapRule[];
  readonly larder: Larder;
  /** Those that hold for the meal: nothing is offered that one of them does not allow. */
  readonly diets: readonly Diet[];
}

/** The one food that an ingredient is; null where nobody knows it, or it may be several. */
function foodName(ingredient: Ingredient, larder: Larder): string | null {
  const { foods } = kindOf(ingredient, larder);
  return foods.length === 1 ? (foods[0]?.name ?? null) : null;
}

/** An amount in another unit; null where the two do not go together. */
function inUnit(amount: Measured, unit: Unit): Measured | null {
  if (amount.unit === unit) return amount;
  const converted = convert(amount, unit);
  return converted.ok ? converted.value : null;
}

/** How much of the other food comes in for an amount; null where their units do not go together. */
function taken(ratio: Ratio, amount: Amount): Amount | null {
  if (ratio.kind === "factor") return scaleAmount(amount, ratio.factor);
  const own = amount.kind === "to-taste" ? null : inUnit(amount, ratio.for.unit);
  if (own === null) return null;
  const each = div(rational(ratio.take.low), rational(ratio.for.low));
  return measured(mul(rational(own.low), each), ratio.take.unit, mul(rational(own.high), each));
}

function sum(a: Measured, b: Measured): Measured | null {
  const other = inUnit(b, a.unit);
  if (other === null) return null;
  return measured(
    add(rational(a.low), rational(other.low)),
    a.unit,
    add(rational(a.high), rational(other.high)),
  );
}

/** What else goes in: more of an ingredient of the dish, or a sentence where it has none. */
function added(
  rule: SwapRule,
  ingredient: Ingredient,
  dish: Dish,
  larder: Larder,
): Pick<Swap, "changes" | "effect"> {
  const more = rule.add === null ? null : taken(rule.add.take, ingredient.amount);
  if (rule.add === null || more === null || more.kind === "to-taste")
    return { changes: [], effect: rule.effect };
  const { food } = rule.add;
  const there = dish.ingredients.find((one) => one !== ingredient && foodName(one, larder) === food);
  const whole = there === undefined || there.amount.kind === "to-taste" ? null : sum(there.amount, more);
  if (there !== undefined && whole !== null)
    return { changes: [{ ingredient: there.id, amount: whole }], effect: rule.effect };
  const told = `It goes with ${spokenIngredient(more, food)}.`;
  return { changes: [], effect: rule.effect === null ? told : `${told} ${rule.effect}` };
}

function swapFrom(rule: SwapRule, ingredient: Ingredient, dish: Dish, larder: Larder): Swap | null {
  const amount = taken(rule.take, ingredient.amount);
  if (amount === null) return null;
  return {
    use: rule.use,
    amount: amount.kind === "to-taste" ? null : amount,
    ...added(rule, ingredient, dish, larder),
    ...(rule.longer === 0 ? {} : { longer: rule.longer }),
    isCommon: true,
  };
}

function fromRules(ingredient: Ingredient, dish: Dish, table: SwapTable): readonly Swap[] {
  const { rules, larder, diets } = table;
  const food = foodName(ingredient, larder);
  if (food === null) return [];
  return rules
    .filter((rule) => rule.for.includes(food))
    .filter(
      (rule) =>
        isAllowed(rule.use, diets, larder) && (rule.add === null || isAllowed(rule.add.food, diets, larder)),
    )
    .flatMap((rule) => swapFrom(rule, ingredient, dish, larder) ?? []);
}

/** The same food without what is avoided goes before another food. */
function commonSwaps(ingredient: Ingredient, dish: Dish, table: SwapTable): readonly Swap[] {
  const { larder, diets } = table;
  const known = [
    ingredient.item,
    foodName(ingredient, larder) ?? "",
    ...ingredient.swaps.map(({ use }) => use),
  ];
  const own = known.map(normaliseFood);
  const plainer = plainerSwap(ingredient, diets, larder);
  const others = [...(plainer === null ? [] : [plainer]), ...fromRules(ingredient, dish, table)];
  const there = ingredient.swaps.filter(({ isCommon }) => isCommon === true).length;
  const names = others.map(({ use }) => normaliseFood(use));
  const isNew = ({ use }: Swap, index: number): boolean =>
    !own.includes(normaliseFood(use)) && names.indexOf(normaliseFood(use)) === index;
  return others.filter(isNew).slice(0, Math.max(0, MOST - there));
}

/**
 * The meal with what may stand in for its ingredients by common practice, behind what each recipe offers itself. It is put
 * in before the meal begins, so that it stands in the log and every device offers the same.
 */
export function withCommonSwaps(meal: CookingMeal, table: SwapTable): CookingMeal {
  const dishes = meal.dishes.map((dish) => ({
    ...dish,
    ingredients: dish.ingredients.map((ingredient) => ({
      ...ingredient,
      swaps: [...ingredient.swaps, ...commonSwaps(ingredient, dish, table)],
    })),
  }));
  return { ...meal, dishes };
}
