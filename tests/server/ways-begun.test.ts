import { expect, it } from "vitest";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { takesMinutes } from "../../server/kitchen/meal-book.ts";
import { inWays } from "../../core/recipe/in-ways.ts";
import { dishId, stepId } from "../../core/recipe/model.ts";
import { ok } from "../../core/units/result.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { pattiesMeal } from "../core/cook/patties-evening.ts";
import { five } from "./small-meal.ts";

it("[K30] the server chooses when the meal begins, and every device folds the same ways from its log", () => {
  const parts = {
    store: new MemoryMealStore(),
    meal: () => ok(pattiesMeal),
    now: () => five,
    newId: () => "id",
  };
  const kitchen = Kitchen.open(parts);
  if (!kitchen.ok) throw new Error(kitchen.error.code);
  kitchen.value.begin({ id: "begin", meal: "test-supper", servings: {}, serveAt: null });
  const { events } = kitchen.value.snapshot();
  const ways = appendEvents(emptyLog, events).session?.meal.dishes[0]?.steps[1]?.ways;
  expect(ways).toMatchObject({ taken: "in the oven", chosen: { by: "plan" } });
  expect(kitchen.value.evening()?.state.meal.dishes[0]?.steps[1]?.ways).toEqual(ways);
});

it("[K30] a meal's card says how long it takes in the ways that would be chosen", () => {
  const inPan = [
    { dish: dishId("patties"), step: stepId("cook"), way: "in a pan", chosen: { by: "cook" } as const },
  ];
  expect(takesMinutes(pattiesMeal)).toBeLessThan(takesMinutes(inWays(pattiesMeal, inPan)));
});
