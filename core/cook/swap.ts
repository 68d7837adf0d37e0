import type { Dish, DishId, Ingredient, IngredientId, Span, Step, Swap } from "../recipe/model.ts";
import type { Amount } from "../units/amount.ts";
import { measured } from "../units/amount.ts";
import { compare, div, mul, rational, ZERO } from "../units/rational.ts";
import { addSeconds, longer, minutes, seconds, type Seconds } from "../units/quantity.ts";
import { atPace } from "../pace/pace.ts";
import { expandTasks } from "../plan/tasks.ts";
import type { Session } from "./session.ts";

/** The swap that an order names; null where there is none. */
export function findSwap(
  session: Session,
  dish: DishId,
  ingredient: IngredientId,
  index: number,
): Swap | null {
  const found = session.meal.dishes.find((one) => one.id === dish);
  return found?.ingredients.find((one) => one.id === ingredient)?.swaps[index] ?? null;
}

/** The meal as it is cooked from now on: the dish holds what is really used. */
export function swapped(
  session: Session,
  dishId: DishId,
  ingredientId: IngredientId,
  index: number,
): Session {
  const swap = findSwap(session, dishId, ingredientId, index);
  if (swap === null) return session;
  const dishes = session.meal.dishes.map((dish) =>
    dish.id === dishId ? withSwap(dish, ingredientId, swap) : dish,
  );
  const meal = { ...session.meal, dishes };
  const swaps = [...session.swaps, { dish: dishId, ingredient: ingredientId, swap: index }];
  return { ...session, meal, tasks: atPace(expandTasks(meal), session.paces), swaps };
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
  const steps = dish.steps.map((step): Step => {
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
