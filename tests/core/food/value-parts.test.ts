import { describe, expect, it } from "vitest";
import { partWords, notCountedWords } from "../../../core/food/part-words.ts";
import { NUTRIENT_NAMES, type Nutrient } from "../../../core/food/nutrients.ts";
import { valueParts, type ValueParts } from "../../../core/food/value-parts.ts";
import { mealValues } from "../../../core/food/values.ts";
import { mealId, type Dish } from "../../../core/recipe/model.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { add, div, ratio, toNumber, ZERO } from "../../../core/units/rational.ts";
import { dishOf, spoilt } from "../recipe/bean-pot.ts";
import { shippedPantry } from "../recipe/shelf.ts";
import { CHECK_SOUP } from "./check-soup.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table } = await shippedFoods();
const pantry = await shippedPantry();

function partsOf(nutrient: Nutrient, dish: Dish): ValueParts {
  const kitchen = { burners: 1, ovens: [], appliances: [] };
  const meal = { id: mealId("check-meal"), name: "Check Meal", dishes: [dish], kitchen };
  const [values] = mealValues(meal, table).dishes;
  if (values === undefined) throw new Error("a meal without a dish");
  return valueParts(nutrient, values);
}

const wordsOf = ({ nutrient, parts }: ValueParts) => parts.map((part) => partWords(nutrient, part));

describe("where a value comes from", () => {
  /**
   * USDA SR28, mg of sodium in 100 g, as its extract has them: 16069 6, 11282 4, 11124 69, 11143 80, 11215 17,
   * 11885 10, 02014 168, 14411 4, 09152 1; times the grams of the soup that was worked outside this project.
   */
  it("[F56] a lentil soup worked by hand from SR28: each ingredient's sodium with its number and grams", () => {
    const { parts } = partsOf("sodium", dishOf(CHECK_SOUP));
    expect(
      parts.map((part) =>
        part.kind === "unknown"
          ? part.why
          : [part.food.ndb, part.weight.high, part.in100g.low, part.inAll.high].map((one, index) =>
              index === 0 ? one : toNumber(one as typeof ZERO),
            ),
      ),
    ).toEqual([
      ["11124", 122, 69, 84.18],
      ["11143", 80, 80, 64],
      ["14411", 948, 4, 37.92],
      ["11885", 240, 10, 24],
      ["16069", 192, 6, 11.52],
      ["11282", 110, 4, 4.4],
      ["02014", 2.1, 168, 3.528],
      ["11215", 9, 17, 1.53],
      ["09152", 15.25, 1, 0.1525],
    ]);
  });

  /** The same worked soup: 57.81 mg of sodium and 651.65 mg of potassium a serving. */
  it.each([
    ["sodium", 57.81],
    ["potassium", 651.65],
  ] as const)(
    "[F56] the parts of a serving add up to what was worked by hand: %s %d mg",
    (nutrient, figure) => {
      const { parts } = partsOf(nutrient, dishOf(CHECK_SOUP));
      const all = parts.map((part) => (part.kind === "known" ? part.aServing.low : ZERO)).reduce(add, ZERO);
      expect(Math.abs(toNumber(all) - figure)).toBeLessThanOrEqual(0.0051);
    },
  );

  it("[F56] in every dish that ships the parts add up to the total, exactly, and what is unknown is the same", () => {
    const dishes = pantry.meals.flatMap((meal) => {
      const cooking = cookingMeal(meal, pantry.dishes);
      return cooking.ok ? mealValues(cooking.value, pantry.foods ?? table).dishes : [];
    });
    expect(dishes.length).toBeGreaterThan(5);
    for (const values of dishes)
      for (const nutrient of NUTRIENT_NAMES) {
        const { parts, inAll, aServing } = valueParts(nutrient, values);
        const known = parts.flatMap((part) => (part.kind === "known" ? [part.inAll] : []));
        const high = known.map((one) => one.high).reduce(add, ZERO);
        expect([known.map(({ low }) => low).reduce(add, ZERO), high]).toEqual([inAll.low, inAll.high]);
        expect(aServing.high).toBe(div(high, ratio(values.dish.yield.servings)));
        const unknown = parts.flatMap((part) => (part.kind === "unknown" ? [part.ingredient.item] : []));
        expect(unknown).toEqual(inAll.unknown);
      }
  });

  it("[F57] what has no figure stands last, is never nought, and tells why", () => {
    const odd = dishOf(
      spoilt(spoilt(CHECK_SOUP, "item: cumin seeds", "item: moon dust"), "dry lentils", "red lentils"),
    );
    const last = wordsOf(partsOf("sugars", odd)).slice(-2);
    // SR28 has no sugars for number 16144, and the table of foods no moon dust.
    expect(last).toEqual([
      {
        item: "red lentils",
        amount: "1 cup",
        food: "dry red lentil",
        from: "SR28 number 16144",
        weighs: "192 g",
        in100g: null,
        inAll: "unknown",
        aServing: "unknown",
        notes: ["The table of foods has no figure for it."],
      },
      {
        item: "moon dust",
        amount: "1 teaspoon",
        food: null,
        from: null,
        weighs: null,
        in100g: null,
        inAll: "unknown",
        aServing: "unknown",
        notes: ['No food in the table is called "moon dust".'],
      },
    ]);
  });

  it("[F57] of several foods it lies between them, with all their numbers; one without a figure makes it unknown", () => {
    const of = (line: string) =>
      wordsOf(partsOf("sugars", dishOf(spoilt(CHECK_SOUP, "{ item: dry lentils, amount: 1 cup }", line))));
    const berries = of("{ item: berries, food: blueberry or raspberry, amount: 1 cup }");
    // SR28 numbers 09050 and 09302: 9.96 and 4.42 g of sugars in 100 g, cups of 148 and 123 g.
    expect(berries.find(({ item }) => item === "berries")).toMatchObject({
      from: "SR28 number 09050 or 09302",
      weighs: "123 to 148 g",
      in100g: "4.42 to 9.96 g",
      inAll: "5.44 to 14.74 g",
    });
    const pulses = of("{ item: pulses, food: dry lentil or dry red lentil, amount: 1 cup }");
    expect(pulses.at(-1)?.notes).toEqual(["One of the foods that it may be has no figure for it."]);
  });

  it("[F57] tells which size was taken for granted, and what is not counted", () => {
    const salted = spoilt(CHECK_SOUP, "1 tsp }", "1 tsp, optional: true }\n  salt: to taste");
    const parts = partsOf("sodium", dishOf(salted.replace("cumin, water", "cumin, salt, water")));
    const onion = wordsOf(parts).find(({ item }) => item === "onion");
    expect(onion?.notes).toEqual(["The recipe names no size, so a medium one was taken."]);
    expect(notCountedWords(parts.notCounted)).toBe("Not counted: cumin seeds (optional), salt (to taste).");
    expect(notCountedWords([])).toBeNull();
  });
});
