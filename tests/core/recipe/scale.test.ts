import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Dish, IngredientId } from "../../../core/recipe/model.ts";
import { cookingMeal, scaleDish } from "../../../core/recipe/scale.ts";
import type { Amount } from "../../../core/units/amount.ts";
import { convert } from "../../../core/units/measures.ts";
import { ZERO, add, rational } from "../../../core/units/rational.ts";
import { BEAN_POT, dishOf } from "./bean-pot.ts";
import { shippedPantry } from "./shelf.ts";

const pantry = await shippedPantry();
const dishes = [...pantry.dishes.values()];
const anyDish = fc.constantFrom(...dishes);
const servings = fc.integer({ min: 1, max: 100 });
const withoutBatches = (dish: Dish): unknown => ({
  ...dish,
  steps: dish.steps.map((step) => ({ ...step, batch: null })),
});

/** What the steps take of an ingredient in all, in the unit of the list; null for what goes in to taste. */
function taken(dish: Dish, id: IngredientId, listed: Amount): readonly [low: string, high: string] | null {
  if (listed.kind === "to-taste") return null;
  const uses = dish.steps.flatMap((step) => step.uses.filter((use) => use.ingredient === id));
  return uses.reduce<readonly [ReturnType<typeof rational>, ReturnType<typeof rational>]>(
    ([low, high], { amount }) => {
      const same = convert(amount, listed.unit);
      if (!same.ok) throw new Error(same.error);
      return [add(low, rational(same.value.low)), add(high, rational(same.value.high))];
    },
    [ZERO, ZERO],
  );
}

describe("a dish for more or fewer", () => {
  it("[R21] every amount is scaled exactly, in the list, in the steps and in the swaps", () => {
    const dish = scaleDish(dishOf(BEAN_POT), 6);
    expect(dish.yield).toEqual({ servings: 6, of: "bowls" });
    expect(dish.ingredients.map(({ amount }) => amount)).toEqual([
      { kind: "measured", low: "9/2", high: "9/2", unit: "cup" },
      { kind: "measured", low: "3/2", high: "3/2", unit: "bunch" },
      { kind: "measured", low: "3/1", high: "3/1", unit: "cup" },
      { kind: "to-taste" },
    ]);
    expect(dish.steps[1]?.uses[1]?.amount).toEqual({
      kind: "measured",
      low: "9/4",
      high: "9/4",
      unit: "cup",
    });
  });

  it("[R21] scaled to one figure and then to another, a dish is as if scaled to the other at once", () => {
    fc.assert(
      fc.property(anyDish, servings, servings, (dish, a, b) => {
        expect(withoutBatches(scaleDish(scaleDish(dish, a), b))).toEqual(withoutBatches(scaleDish(dish, b)));
      }),
    );
  });

  it("[R21] there and back changes nothing, and times never change", () => {
    fc.assert(
      fc.property(anyDish, servings, (dish, a) => {
        const there = scaleDish(dish, a);
        expect(there.steps.map(({ time }) => time)).toEqual(dish.steps.map(({ time }) => time));
        expect(withoutBatches(scaleDish(there, dish.yield.servings))).toEqual(withoutBatches(dish));
      }),
    );
  });

  it("[R22] what the steps take is what is listed, for any number of servings", () => {
    fc.assert(
      fc.property(anyDish, servings, (dish, a) => {
        const scaled = scaleDish(dish, a);
        for (const { id, amount } of scaled.ingredients) {
          const expected = amount.kind === "to-taste" ? null : [amount.low, amount.high];
          expect(taken(scaled, id, amount)).toEqual(expected);
        }
      }),
    );
  });

  it("[R23] pieces of a batch stay whole: never too few, never one too many", () => {
    const batched = dishes.filter((dish) => dish.steps.some(({ batch }) => batch !== null));
    expect(batched.length).toBeGreaterThan(0);
    fc.assert(
      fc.property(fc.constantFrom(...batched), servings, (dish, a) => {
        const batches = (one: Dish): readonly number[] => one.steps.flatMap(({ batch }) => batch?.of ?? []);
        batches(scaleDish(dish, a)).forEach((pieces, index) => {
          const exact = ((batches(dish)[index] ?? 0) * a) / dish.yield.servings;
          expect(Number.isInteger(pieces)).toBe(true);
          expect(pieces).toBeGreaterThanOrEqual(exact - 1e-9);
          expect(pieces).toBeLessThan(exact + 1);
        });
      }),
    );
  });
});

describe("a meal ready to cook", () => {
  const supper = pantry.meals.find(({ id }) => id === "welcome-supper");
  if (supper === undefined) throw new Error("the welcome supper is not there");

  it("[R24] its dishes are looked up and scaled to the meal's servings, or to those asked for", () => {
    const usual = cookingMeal(supper, pantry.dishes);
    const asked = cookingMeal(supper, pantry.dishes, { "lentil-soup": 7 });
    expect(usual.ok && usual.value.dishes.map((dish) => dish.yield.servings)).toEqual([4, 4, 4, 4, 4]);
    expect(asked.ok && asked.value.dishes.map((dish) => dish.yield.servings)).toEqual([7, 4, 4, 4, 4]);
    expect(asked.ok && { id: asked.value.id, name: asked.value.name, kitchen: asked.value.kitchen }).toEqual({
      id: supper.id,
      name: supper.name,
      kitchen: supper.kitchen,
    });
  });

  it.each<[string, Readonly<Record<string, number>>, string]>([
    [
      "no servings",
      { "lentil-soup": 0 },
      "Smoky Lentil Soup cannot be made for 0; choose a whole number from 1 to 100.",
    ],
    [
      "half a serving",
      { "lentil-soup": 1.5 },
      "Smoky Lentil Soup cannot be made for 1.5; choose a whole number from 1 to 100.",
    ],
    [
      "a crowd",
      { "lentil-soup": 101 },
      "Smoky Lentil Soup cannot be made for 101; choose a whole number from 1 to 100.",
    ],
    [
      "a dish of another meal",
      { kachumber: 2 },
      'Welcome Supper has no dish "kachumber"; choose one of its own.',
    ],
  ])("[R24] %s is refused with a sentence", (_, wanted, error) => {
    expect(cookingMeal(supper, pantry.dishes, wanted)).toEqual({ ok: false, error });
  });

  it("[R24] a dish that is gone is named", () => {
    const without = new Map([...pantry.dishes].filter(([id]) => id !== "lentil-soup"));
    expect(cookingMeal(supper, without)).toEqual({
      ok: false,
      error: 'The dish "lentil-soup" of Welcome Supper is not there; mend its file first.',
    });
  });
});
