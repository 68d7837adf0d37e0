import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findFood } from "../../../core/food/find-food.ts";
import { boundsOf, type Food } from "../../../core/food/food.ts";
import { labelBounds, readLabelFigure } from "../../../core/food/label-figure.ts";
import type { Printed, Rounding } from "../../../core/food/label-rounding-table.ts";
import { misprints, type Told } from "../../../core/food/label-sense.ts";
import { NUTRIENT_NAMES, type Nutrient } from "../../../core/food/nutrients.ts";
import { readLabel, readLabels, withLabels } from "../../../core/food/read-label.ts";
import { fromNumber, mul, ratio, rational, toNumber } from "../../../core/units/rational.ts";
import { mealValues } from "../../../core/food/values.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { shippedPantry } from "../recipe/shelf.ts";
import { DRINK, TOMATOES } from "./labels.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table, foods } = await shippedFoods();

function foodOf(text: string): Food {
  const { food, mistakes } = readLabel("labels/check.yaml", text, table);
  if (food === null) throw new Error(mistakes.map(({ line, sentence }) => `${line}: ${sentence}`).join("\n"));
  return food;
}

const ends = (food: Food, nutrient: Nutrient): readonly [number, number] | null => {
  const bounds = boundsOf(food, nutrient);
  return bounds === null ? null : [toNumber(bounds.low), toNumber(bounds.high)];
};

describe("a label of the cook's own", () => {
  it("[F30] is read whole: names, serving, the measures it tells and those of the food it is like", () => {
    const food = foodOf(TOMATOES);
    expect({ ...food, per100: null, bounds: null }).toEqual({
      name: "crushed tomatoes, no salt added",
      also: ["plain crushed tomatoes"],
      ndb: null,
      label: "labels/check.yaml",
      madeOf: null,
      mayHold: [],
      per100: null,
      bounds: null,
      refuse: rational("0"),
      measures: [{ count: ratio(1, 2), unit: "label-cup", size: null, how: null, grams: ratio(120) }],
    });
    expect(food.per100.sodium).toBe(mul(ratio(15), ratio(100, 120)));
  });

  /** Regulation (EU) 1169/2011: salt is sodium times 2.5 (annex I, point 11); 1 kcal is 4.184 kJ by definition. */
  it("[F30] kilojoules become kilocalories, and salt the sodium in it", () => {
    const food = foodOf(DRINK);
    expect(toNumber(food.per100.energy ?? ratio(0))).toBeCloseTo((190 / 4.184) * (200 / 206), 9);
    expect(toNumber(food.per100.sodium ?? ratio(0))).toBeCloseTo((100 / 2.5) * (200 / 206), 9);
    expect(food.measures).toEqual([
      { count: ratio(200), unit: "ml", size: null, how: null, grams: ratio(206) },
    ]);
  });

  it("[F30] the EU's carbohydrate is without fibre, the table's with it; without a figure for it none is known", () => {
    const food = foodOf(DRINK);
    expect(toNumber(food.per100.carbohydrate ?? ratio(0))).toBeCloseTo(((7.4 + 0.9) * 200) / 206, 9);
    expect(ends(foodOf(DRINK.replace("  fibre: 0.9 g\n", "")), "carbohydrate")).toBeNull();
  });
});

/**
 * How a true value is printed by 21 CFR 101.9(c), written after the table in the FDA's Guide to Nutrition Labeling and
 * Education Act Requirements, attachment 7 (www.fda.gov).
 */
function printed(nutrient: Nutrient, value: number): string {
  const steps = (by: number): number => Math.round(value / by) * by;
  if (nutrient === "energy") return `${value < 5 ? 0 : value <= 50 ? steps(5) : steps(10)} kcal`;
  if (nutrient === "sodium") return `${value < 5 ? 0 : value <= 140 ? steps(5) : steps(10)} mg`;
  if (nutrient === "fat" || nutrient === "saturated")
    return `${value < 0.5 ? 0 : value < 5 ? steps(0.5) : steps(1)} g`;
  return value < 0.5 ? "0 g" : value < 1 ? "less than 1 g" : `${steps(1)} g`;
}

const bounds = (name: Printed, text: string, rounding: Rounding): readonly [number, number] => {
  const figure = readLabelFigure(name, text);
  if (!figure.ok) throw new Error(figure.error);
  const { low, high } = labelBounds(name, figure.value, rounding);
  return [toNumber(low), toNumber(high)];
};

describe("what a printed figure tells", () => {
  it.each(["energy", "fat", "saturated", "sodium", "protein", "carbohydrate", "fibre", "sugars"] as const)(
    "[F31] whatever %s is printed so by 21 CFR 101.9 lies between the ends",
    (nutrient) => {
      fc.assert(
        fc.property(fc.double({ min: 0, max: 900, noNaN: true }), fc.constantFrom(1, 30), (value, part) => {
          const [low, high] = bounds(nutrient, printed(nutrient, value / part), "us");
          expect(value / part).toBeGreaterThanOrEqual(low);
          expect(value / part).toBeLessThanOrEqual(high);
        }),
      );
    },
  );

  it.each<[Printed, string, Rounding, number, number]>([
    ["fat", "0 g", "us", 0, 0.5],
    ["fat", "2.5 g", "us", 2.25, 2.75],
    ["fat", "5 g", "us", 4.75, 5.5],
    ["energy", "50 kcal", "us", 47.5, 55],
    ["sodium", "140 mg", "us", 137.5, 145],
    ["sodium", "0 mg", "us", 0, 5],
    ["protein", "less than 1 g", "us", 0, 1],
    ["sugars", "<0.5 g", "eu", 0, 0.5],
    // Two parts in a hundred of 4,700 mg, 21 CFR 101.9(c)(8)(iv): the nought on a label is no nought for the kidneys.
    ["potassium", "0 mg", "us", 0, 94],
    ["salt", "0.10 g", "eu", 0.095, 0.105],
    ["salt", "1.2 g", "eu", 1.15, 1.25],
    // Finer than the rules ask: half of the last place.
    ["fat", "3.2 g", "us", 3.15, 3.25],
    ["fat", "3,2 g", "exact", 3.2, 3.2],
  ])("[F31] %s printed %s by the rules %s is %d to %d", (name, text, rounding, low, high) => {
    const [least, most] = bounds(name, text, rounding);
    expect(least).toBeCloseTo(low, 12);
    expect(most).toBeCloseTo(high, 12);
  });

  it("[F31] both ends go into the sum: 360 g of a food with 0 g of fat in 120 g hold less than 1.5 g", async () => {
    const pantry = await shippedPantry();
    const meal = pantry.meals.find(({ id }) => id === "welcome-supper");
    const cooking = meal === undefined ? null : cookingMeal(meal, pantry.dishes, { "lentil-soup": 12 });
    if (cooking?.ok !== true) throw new Error("the welcome supper cannot be cooked");
    const nothing = foodOf(TOMATOES.replace("fat: 0.5 g", "fat: 0 g"));
    const soup = cooking.value.dishes.filter(({ id }) => id === "lentil-soup");
    const other = { ...nothing, per100: { ...nothing.per100 }, bounds: { ...(nothing.bounds ?? never()) } };
    const [with0, withExact] = [nothing, { ...other, bounds: null }].map(
      (food) =>
        mealValues(
          { ...cooking.value, dishes: soup },
          withLabels(table, { foods: [food], broken: new Set() }),
        ).inAll.fat,
    );
    // Three US cups of 236.588 mL at 120 g in half a label cup of 120 mL.
    const grams = (3 * 236.5882365 * 120) / 120;
    const more = toNumber(with0?.high ?? ratio(0)) - toNumber(withExact?.high ?? ratio(0));
    expect(more).toBeCloseTo((0.5 / 120) * grams, 9);
    expect(with0?.low).toBe(withExact?.low);
  });
});

function never(): never {
  throw new Error("a label without bounds");
}

describe("a label beside the table", () => {
  const labels = readLabels([{ place: "labels/a.yaml", text: TOMATOES }], table);
  const own = withLabels(table, labels);

  it("[F32] what it does not tell stays unknown, though the food it is like has a figure", () => {
    const food = foodOf(TOMATOES);
    expect(table.get("canned crushed tomato")?.per100.phosphorus).not.toBeNull();
    expect(
      NUTRIENT_NAMES.filter((nutrient) => food.per100[nutrient] === null || ends(food, nutrient) === null),
    ).toEqual(["potassium", "phosphorus", "calcium", "iron", "vitamin-c"]);
  });

  it("[F32] behind the name of a label with a mistake there is no food, though the table has one", () => {
    const text = TOMATOES.replace("label: crushed", "label: canned crushed").replace("15 mg", "15 stone");
    const broken = readLabels([{ place: "labels/a.yaml", text: text.replace(", no salt added", "") }], table);
    expect(broken.foods).toEqual([]);
    expect(table.has("canned crushed tomato")).toBe(true);
    expect(findFood(withLabels(table, broken), "canned crushed tomatoes", null).ok).toBe(false);
  });

  it("[F35] it has the names it says and no others, before the table", () => {
    const found = (item: string, preparation: string | null) => {
      const food = findFood(own, item, preparation);
      return food.ok ? (food.value.label ?? food.value.ndb) : null;
    };
    expect(found("crushed tomatoes", "no salt added")).toBe("labels/a.yaml");
    expect(found("plain crushed tomatoes", null)).toBe("labels/a.yaml");
    expect(found("canned crushed tomatoes", null)).toBe("11693");
    const milk = TOMATOES.replace("also: [plain crushed tomatoes]", "also: [skim milk]");
    const other = withLabels(table, readLabels([{ place: "labels/b.yaml", text: milk }], table));
    expect(findFood(other, "skim milk", null)).toMatchObject({ value: { label: "labels/b.yaml" } });
  });

  it("[F35] where the recipe says without salt, a label that does not say so is not taken", () => {
    const salted = readLabels([{ place: "a", text: TOMATOES.replaceAll(", no salt added", "") }], table);
    expect(findFood(withLabels(table, salted), "crushed tomatoes", "no salt added")).toMatchObject({
      ok: false,
      error: "The recipe says without salt, and the table has only crushed tomatoes.",
    });
  });

  it("[F35] a name on two labels is the first one's, and told", () => {
    const both = readLabels(
      [
        { place: "labels/a.yaml", text: TOMATOES },
        { place: "labels/b.yaml", text: DRINK.replace("also: [oat drink]", "also: [plain crushed tomato]") },
      ],
      table,
    );
    expect(both.foods.map(({ label }) => label)).toEqual(["labels/a.yaml"]);
    expect(both.mistakes).toEqual([
      {
        file: "labels/b.yaml",
        line: 1,
        field: "label",
        sentence:
          '"plain crushed tomato" is already the name of the food in labels/a.yaml; give one of them another name.',
      },
    ]);
    expect(withLabels(table, both).get("plain crushed tomato")?.label).toBe("labels/a.yaml");
  });
});

describe("what is no misprint", () => {
  /** What gives energy and is none of the three (alcohol, acids), and what SR28 reckons otherwise. */
  const ODD = /vinegar|wine|beer|vanilla extract|baking powder/;

  it("[F34] no food of USDA SR28 in the table is taken for one, but for those with alcohol or acids", () => {
    const wrong = foods.flatMap((food) => {
      const told: Told = new Map(
        NUTRIENT_NAMES.flatMap((nutrient) => {
          const figure = boundsOf(food, nutrient);
          return figure === null ? [] : [[nutrient, figure] as const];
        }),
      );
      return misprints(told, false).length === 0 ? [] : [food.name];
    });
    expect(foods.length).toBeGreaterThan(500);
    expect(wrong.filter((name) => !ODD.test(name))).toEqual([]);
  });

  it("[F34] nor is any of them with kilojoules in the place of kilocalories let through, where it has energy", () => {
    const rich = foods.filter(
      ({ per100, name }) => !ODD.test(name) && toNumber(per100.energy ?? ratio(0)) > 40 && hasThree(per100),
    );
    const let_ = rich.filter((food) => {
      const told: Told = new Map(
        (["energy", "protein", "fat", "carbohydrate", "fibre"] as const).flatMap((nutrient) => {
          const figure = food.per100[nutrient];
          const by = nutrient === "energy" ? fromNumber(4.184) : ratio(1);
          return figure === null
            ? []
            : [[nutrient, { low: mul(figure, by), high: mul(figure, by) }] as const];
        }),
      );
      return misprints(told, false).length === 0;
    });
    expect(rich.length).toBeGreaterThan(300);
    expect(let_.map(({ name }) => name)).toEqual([]);
  });
});

const hasThree = (per100: Food["per100"]): boolean =>
  (["protein", "fat", "carbohydrate"] as const).every((nutrient) => per100[nutrient] !== null);
