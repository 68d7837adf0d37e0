import type { CookingMeal, Dish, Ingredient, IngredientId, Span, Step, Swap } from "../recipe/model.ts";
import type { Amount } from "../units/amount.ts";
import { measured } from "../units/amount.ts";
import { compare, div, mul, rational, ZERO } from "../units/rational.ts";
import { addSeconds, longer, minutes, seconds, type Seconds } from "../units/quantity.ts";
import { atPace } from "../pace/pace.ts";
import { expandTasks } from "../plan/tasks.ts";
import type { Session } from "./session.ts";
import { stepsNaming } from "./swap-words.ts";
import type { UsedSwap } from "./used-swap.ts";

/** The swap of a meal that is named; null where there is none. */
export function findSwap(meal: CookingMeal, { dish, ingredient, swap }: UsedSwap): Swap | null {
  const found = meal.dishes.find((one) => one.id === dish);
  return found?.ingredients.find((one) => one.id === ingredient)?.swaps[swap] ?? null;
}

/** The meal with a swap: the dish holds what is really used. A swap that is not there changes nothing. */
export function mealWithSwap(meal: CookingMeal, used: UsedSwap): CookingMeal {
  const swap = findSwap(meal, used);
  if (swap === null) return meal;
  const dishes = meal.dishes.map((dish) =>
    dish.id === used.dish ? withSwap(dish, used.ingredient, swap) : dish,
  );
  return { ...meal, dishes };
}

/** The meal as it is cooked from now on. */
export function swapped(session: Session, used: UsedSwap): Session {
  if (findSwap(session.meal, used) === null) return session;
  const meal = mealWithSwap(session.meal, used);
  const tasks = atPace(expandTasks(meal), session.paces);
  const { dish, ingredient, swap } = used;
  return { ...session, meal, tasks, swaps: [...session.swaps, { dish, ingredient, swap }] };
}

function withSwap(dish: Dish, id: IngredientId, swap: Swap): Dish {
  const amounts = new Map<IngredientId, Amount>(
    swap.changes.map((change) => [change.ingredient, change.amount]),
  );
  if (swap.amount !== null) amounts.set(id, swap.amount);
  const before = new Map(dish.ingredients.map((one) => [one.id, one.amount]));
  const ingredients = dish.ingredients.map((one): Ingredient => {
    const amount = amounts.get(one.id) ?? one.amount;
    // What the recipe says of its food, weight and preparation was said of what is no longer in the pot.
    if (one.id === id) return { ...one, amount, item: swap.use, preparation: null, food: null, weighs: null };
    return amounts.has(one.id) ? { ...one, amount, weighs: null } : one;
  });
  const replaced = dish.ingredients.find((one) => one.id === id);
  const told = replaced === undefined ? dish.steps : stepsNaming(dish, replaced, swap.use);
  const steps = told.map((step): Step => {
    const uses = step.uses.map((use) => {
      const to = amounts.get(use.ingredient);
      const from = before.get(use.ingredient);
      return to === undefined || from === undefined ? use : { ...use, amount: inShare(use.amount, from, to) };
    });
    return longerBy(swap.longer ?? seconds(0), id, { ...step, uses });
  });
  return { ...dish, ingredients, steps };
}

const LEAST = minutes(1);

/** What it goes into takes longer or shorter where it runs by itself; a way of doing it likewise. */
function longerBy(by: Seconds, id: IngredientId, step: Step): Step {
  if (by === 0 || !step.uses.some(({ ingredient }) => ingredient === id)) return step;
  const changed = ({ low, high }: Span): Span => ({
    low: longer(LEAST, addSeconds(low, by)),
    high: longer(LEAST, addSeconds(high, by)),
  });
  const isChanged = ({ hands }: Pick<Step, "hands">): boolean => hands === "off";
  const ways = step.ways?.all.map((way) => (isChanged(way) ? { ...way, time: changed(way.time) } : way));
  return {
    ...step,
    time: isChanged(step) ? changed(step.time) : step.time,
    ways: step.ways === null || ways === undefined ? null : { ...step.ways, all: ways },
  };
}

/** A step that took a third of the old amount takes a third of the new one. */
function inShare(part: Amount, from: Amount, to: Amount): Amount {
  if (part.kind === "to-taste" || from.kind === "to-taste" || to.kind === "to-taste") return to;
  if (part.unit !== from.unit || compare(rational(from.high), ZERO) === 0) return to;
  const share = div(rational(part.high), rational(from.high));
  return measured(mul(rational(to.low), share), to.unit, mul(rational(to.high), share));
}
