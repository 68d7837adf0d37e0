import { describe, expect, it } from "vitest";
import { mealValues, type DishValues } from "../../../core/food/values.ts";
import { mealId, type CookingMeal, type Dish } from "../../../core/recipe/model.ts";
import { cookingMeal, scaleDish } from "../../../core/recipe/scale.ts";
import { add, mul, ratio, toNumber, ZERO } from "../../../core/units/rational.ts";
import { dishOf, spoilt } from "../recipe/bean-pot.ts";
import { dishWith } from "../diet/diet-kit.ts";
import { shippedPantry } from "../recipe/shelf.ts";
import { CHECK_SOUP as SOUP } from "./check-soup.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table } = await shippedFoods();
const pantry = await shippedPantry();

const kitchen = { burners: 1, ovens: [], appliances: [] };
const mealOf = (...dishes: readonly Dish[]): CookingMeal => ({
  id: mealId("check-meal"),
  name: "Check Meal",
  dishes,
  kitchen,
});

function valuesOf(dish: Dish): DishValues {
  const [values] = mealValues(mealOf(dish), table).dishes;
  if (values === undefined) throw new Error("a meal without a dish");
  return values;
}

describe("what a dish holds", () => {
  /**
   * Worked outside this project from USDA SR28, per 100 g times grams, nothing for cooking: numbers and grams 16069 192,
   * 11282 110, 11124 122, 11143 80, 11215 9, 11885 240, 02014 2.1, 14411 948, 09152 15.25; four servings.
   */
  it.each([
    ["energy", 845.7, 211.42],
    ["protein", 53.08, 13.27],
    ["fat", 3.72, 0.93],
    ["saturated", 0.55, 0.14],
    ["carbohydrate", 159.25, 39.81],
    ["fibre", 32.13, 8.03],
    ["sugars", 22.06, 5.51],
    ["sodium", 231.23, 57.81],
    ["potassium", 2606.59, 651.65],
  ] as const)(
    "[F13] a lentil soup worked by hand from SR28: %s %d, %d a serving",
    (nutrient, inAll, aServing) => {
      const dish = valuesOf(dishOf(SOUP));
      const [all, one] = [dish.inAll[nutrient], dish.aServing[nutrient]];
      expect([all.unknown, all.low]).toEqual([[], all.high]);
      expect(Math.abs(toNumber(all.low) - inAll)).toBeLessThanOrEqual(0.0051);
      expect(Math.abs(toNumber(one.high) - aServing)).toBeLessThanOrEqual(0.0051);
    },
  );

  // USDA SR28: a lemon yields 48 g of juice (09152, 103 mg potassium in 100 g), a lime 44 g (09160, 117), an orange 86 g (09206, 200).
  it.each([
    ["half a lemon, juiced", 24.72],
    ["juice of 2 limes", 102.96],
    ["1 orange, juiced", 172],
  ])("[F64] %s brings %d mg potassium", (line, potassium) => {
    const { inAll } = valuesOf(dishWith([line]));
    expect([inAll.potassium.unknown, toNumber(inAll.potassium.high)]).toEqual([[], potassium]);
  });

  it("[F13] for twice as many there is twice as much in all, and as much in a serving", () => {
    const [four, eight] = [valuesOf(dishOf(SOUP)), valuesOf(scaleDish(dishOf(SOUP), 8))];
    expect(eight.aServing).toEqual(four.aServing);
    expect(eight.inAll.sodium.low).toBe(mul(four.inAll.sodium.low, ratio(2)));
  });

  it("[F13] a meal holds the sum of its dishes, and a range stays one", () => {
    const other = dishOf(spoilt(SOUP, "1 cup, sliced", "1-2 cups, sliced"));
    const meal = mealValues(mealOf(dishOf(SOUP), other), table);
    const [first, second] = meal.dishes.map(({ inAll }) => inAll.sodium);
    expect(meal.inAll.sodium).toEqual({
      low: add(first?.low ?? ZERO, second?.low ?? ZERO),
      high: add(first?.high ?? ZERO, second?.high ?? ZERO),
      unknown: [],
    });
    // 122 g of carrots more, 69 mg in 100 g (SR28 number 11124).
    expect(toNumber(meal.inAll.sodium.high) - toNumber(meal.inAll.sodium.low)).toBeCloseTo(84.18, 9);
    expect(meal.counted).toBe(18);
  });

  it("[F14] what is no food of the table is missing from every value, and lowers none", () => {
    const dish = valuesOf(dishOf(spoilt(SOUP, "item: cumin seeds", "item: moon dust")));
    expect(new Set(Object.values(dish.inAll).map(({ unknown }) => unknown.join()))).toEqual(
      new Set(["moon dust"]),
    );
    // Cumin seeds would bring 2.1 g with 168 mg of sodium in 100 g (SR28 number 02014).
    expect(toNumber(dish.inAll.sodium.low)).toBeCloseTo(231.23 - 0.021 * 168, 2);
    expect(dish.counted.filter(({ kind }) => kind === "unknown")).toMatchObject([
      { food: null, why: 'No food in the table is called "moon dust".' },
    ]);
  });

  it("[F14] a food without a figure for one value is missing from that one alone", () => {
    const dish = valuesOf(dishOf(spoilt(SOUP, "item: dry lentils", "item: red lentils")));
    expect(dish.inAll.sugars.unknown).toEqual(["red lentils"]);
    expect([dish.inAll.sodium.unknown, dish.inAll.energy.unknown]).toEqual([[], []]);
  });

  it("[F15] what goes in to taste or may be left out is not counted, and listed", () => {
    const salted = spoilt(SOUP, "1 tsp }", "1 tsp, optional: true }\n  salt: to taste");
    const dish = valuesOf(dishOf(salted.replace("cumin, water", "cumin, salt, water")));
    expect(dish.notCounted.map(({ ingredient, why }) => [ingredient.item, why])).toEqual([
      ["cumin seeds", "optional"],
      ["salt", "to taste"],
    ]);
    expect([dish.counted.length, dish.inAll.sodium.unknown]).toEqual([8, []]);
    expect(toNumber(dish.inAll.sodium.low)).toBeCloseTo(231.23 - 0.021 * 168, 2);
  });
});

describe("the food that a dish names", () => {
  const first = (dish: Dish) => {
    const [one] = valuesOf(dish).counted;
    if (one?.kind !== "weighed") throw new Error(one?.why ?? "nothing counted");
    return { food: one.food, grams: [toNumber(one.weight.low), toNumber(one.weight.high)] };
  };
  const of = (ingredient: string): Dish =>
    dishOf(spoilt(SOUP, "{ item: dry lentils, amount: 1 cup }", ingredient));

  it("[F38] it is that food, whatever its own name, by the food's measures", () => {
    const { food, grams } = first(of("{ item: big white beans, food: dry white bean, amount: 1 cup }"));
    // SR28 number 16049: 202 g a cup.
    expect([food.ndb, grams]).toEqual(["16049", [202, 202]]);
    expect(valuesOf(of("{ item: big white beans, amount: 1 cup }")).counted[0]?.kind).toBe("unknown");
  });

  it("[F38] of several it lies between the ends of all, and is unknown where one of them is", () => {
    const berries = of("{ item: berries, food: blueberry or raspberry, amount: 1 cup }");
    const { food, grams } = first(berries);
    // SR28 numbers 09050 and 09302: cups of 148 and 123 g, 4 and 151 mg: vitamin C 9.7 and 26.2 mg in 100 g.
    expect([food.ndb, grams]).toEqual(["09050 or 09302", [123, 148]]);
    const before = valuesOf(of("{ item: ice, food: water, amount: 1 g }")).inAll["vitamin-c"];
    const { low, high } = valuesOf(berries).inAll["vitamin-c"];
    expect(toNumber(low) - toNumber(before.low)).toBeCloseTo(9.7 * 1.23, 9);
    expect(toNumber(high) - toNumber(before.high)).toBeCloseTo(26.2 * 1.48, 9);
    const lentils = valuesOf(of("{ item: pulses, food: dry lentil or dry red lentil, amount: 1 cup }"));
    expect(lentils.inAll.sugars.unknown).toEqual(["pulses"]);
  });

  it("[F39] what the dish says it weighs goes before every measure, and grows with the servings", () => {
    const can = of("{ item: lentils, food: dry lentil, amount: 1 can, weighs: 390-410 g }");
    expect(first(can).grams).toEqual([390, 410]);
    expect(first(scaleDish(can, 6)).grams).toEqual([585, 615]);
    expect(valuesOf(can).inAll.sodium.unknown).toEqual([]);
  });
});

describe("the meals that ship", () => {
  const shipped = pantry.meals.flatMap((meal) => {
    const cooking = cookingMeal(meal, pantry.dishes);
    return cooking.ok ? mealValues(cooking.value, pantry.foods ?? table).dishes : [];
  });

  it("[F18] every ingredient is known and weighed", () => {
    const unknown = shipped.flatMap(({ dish, counted }) =>
      counted.flatMap((one) => (one.kind === "unknown" ? [`${dish.id}: ${one.ingredient.item}`] : [])),
    );
    expect(unknown).toEqual([]);
    expect(shipped.reduce((sum, { counted }) => sum + counted.length, 0)).toBeGreaterThan(60);
  });
});
