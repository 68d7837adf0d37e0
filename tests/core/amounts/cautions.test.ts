import { describe, expect, it } from "vitest";
import { scaleCautions } from "../../../core/amounts/cautions.ts";
import { dishAmounts } from "../../../core/amounts/dish-amounts.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { ratio, type Rational } from "../../../core/units/rational.ts";
import { shippedFoods } from "../food/shipped-foods.ts";
import { dishOf } from "../recipe/bean-pot.ts";
import { shippedPantry } from "../recipe/shelf.ts";

const { table } = await shippedFoods();
const pantry = await shippedPantry();

const about = (id: string, factor: Rational): readonly string[] => {
  const dish = [...pantry.dishes.values()].find((one) => one.id === id);
  return dish === undefined ? ["no such dish"] : scaleCautions(dish, factor).map((one) => one.about);
};

const cake = (eggs: string): Dish =>
  dishOf(`dish: Plain Cake
about: A cake to check eggs with.
yield: 10 slices
ingredients:
  eggs: ${eggs}
  flour: { item: whole wheat flour, amount: 2 cups }
  baking-powder: { item: baking powder, amount: 2 tsp }
steps:
  mix:
    do: Mix it all.
    with: [eggs, flour, baking-powder]
    time: 3 min
  bake:
    do: Bake it.
    hands: off
    time: 30 min
    needs: { oven: 350 F }
`);

const toldEggs = (eggs: string, factor: Rational): string =>
  dishAmounts(cake(eggs), factor, table).lines[0]?.told ?? "";

describe("how a scaled list is told", () => {
  /** SR28 number 01123: a small egg without shell weighs 38 g, a medium one 44 g, a large one 50 g. */
  it.each([
    // 2.7 large ones are 135 g: three medium ones are 132.
    ["3", ratio(9, 10), "3 medium, or 135 g beaten"],
    ["3", ratio(1, 2), "2 small, or 75 g beaten"],
    ["1", ratio(5, 2), "3 medium, or 125 g beaten"],
    ["3", ratio(2), "6"],
    ["{ item: medium eggs, amount: 3 }", ratio(1, 2), "2 small, or 66 g beaten"],
  ])("[R57] %s eggs made %s times are told %s", (eggs, factor, expected) => {
    expect(toldEggs(eggs, factor)).toBe(expected);
  });

  it("[R57] the list keeps the exact number, and an eggplant is no egg", () => {
    const [line] = dishAmounts(cake("3"), ratio(9, 10), table).lines;
    expect(line?.ingredient.amount).toMatchObject({ low: "27/10", high: "27/10" });
    expect(toldEggs("{ item: eggplant, amount: 3 }", ratio(9, 10))).toBe("≈2⅔");
    expect(toldEggs("2-3", ratio(9, 10))).toMatch(/^≈/);
  });

  it("[R57] spoons, cups and scales are told in marks that they have", () => {
    const dish = [...pantry.dishes.values()].find(({ id }) => id === "lentil-soup");
    const lines = dish === undefined ? [] : dishAmounts(dish, ratio(25, 24), table).lines;
    const of = (item: string) => lines.find(({ ingredient }) => ingredient.item === item)?.told;
    expect([of("red lentils"), of("smoked paprika"), of("water"), of("black pepper")]).toEqual([
      "≈1½ cups",
      "≈2 tsp",
      "6¼ cups",
      "to taste",
    ]);
  });
});

describe("what does not grow with the amounts", () => {
  it("[R58] only what concerns the dish is told, and nothing where it is made about as written", () => {
    expect(about("lentil-soup", ratio(2))).toEqual(["times", "work", "liquid", "strength"]);
    expect(about("lentil-soup", ratio(1, 2))).toEqual(["times", "liquid"]);
    expect(about("lentil-soup", ratio(5, 4))).toEqual([]);
    expect(about("berry-crumble", ratio(2))).toEqual(["times", "work", "strength", "pan"]);
    expect(about("griddle-flatbreads", ratio(2))).toEqual(["work", "turns"]);
    expect(about("mushroom-barley", ratio(2))).toContain("crowding");
    expect(about("stewed-plums", ratio(2))).toContain("cooling");
    expect(about("stewed-plums", ratio(1, 2))).not.toContain("cooling");
  });

  it("[R58] turns are counted anew, also where the amount grows by little", () => {
    const breads = [...pantry.dishes.values()].find(({ id }) => id === "griddle-flatbreads");
    const sentences = breads === undefined ? [] : scaleCautions(breads, ratio(5, 4));
    // Eight flatbreads, three at a time, are three turns; ten are four.
    expect(sentences).toEqual([
      {
        about: "turns",
        sentence: '10 flatbreads with 3 at a time make 4 turns instead of 3 at "griddle the breads".',
      },
    ]);
  });

  it("[R58] raising and eggs are told where there are any", () => {
    expect(scaleCautions(cake("3"), ratio(1, 2)).map((one) => one.about)).toEqual([
      "times",
      "raising",
      "pan",
      "eggs",
    ]);
    expect(scaleCautions(cake("3"), ratio(1, 2)).at(-1)?.sentence).toBe(
      "1.5 eggs do not come out even: beat one more, and measure.",
    );
    expect(scaleCautions(cake("3"), ratio(2)).map((one) => one.about)).not.toContain("eggs");
  });

  it("[R58] every sentence about a shipped dish is one sentence, and can be said", () => {
    for (const dish of pantry.dishes.values()) {
      for (const factor of [ratio(1, 3), ratio(7, 3)]) {
        for (const { sentence } of scaleCautions(dish, factor)) {
          expect(sentence).toMatch(/^[A-Z0-9][^.!?]*(?:\.\d[^.!?]*)*\.$/);
          expect(sentence).not.toMatch(/undefined|NaN/);
          expect(sentence.length).toBeLessThan(260);
        }
      }
    }
  });
});
