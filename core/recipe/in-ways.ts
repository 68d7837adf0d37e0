import type { CookingMeal, DishId, Step, StepId, WayChosen } from "./model.ts";

/** One step of one dish, done in one of its ways. */
export interface WayTaken {
  readonly dish: DishId;
  readonly step: StepId;
  readonly way: string;
}

/** The step done in another of its ways; unchanged where it has none of that name. */
export function inWay(step: Step, name: string, chosen: WayChosen): Step {
  const way = step.ways?.all.find((one) => one.name === name);
  if (step.ways === null || way === undefined) return step;
  const { name: taken, ...work } = way;
  return { ...step, ...work, ways: { ...step.ways, taken, chosen } };
}

/** The meal with some of its steps done in other ways. */
export function inWays(
  meal: CookingMeal,
  ways: readonly (WayTaken & { readonly chosen?: WayChosen })[],
): CookingMeal {
  if (ways.length === 0) return meal;
  const dishes = meal.dishes.map((dish) => {
    const own = ways.filter((taken) => taken.dish === dish.id);
    const steps = dish.steps.map((step) => {
      const taken = own.find((one) => one.step === step.id);
      return taken === undefined ? step : inWay(step, taken.way, taken.chosen ?? { by: "recipe" });
    });
    return own.length === 0 ? dish : { ...dish, steps };
  });
  return { ...meal, dishes };
}
