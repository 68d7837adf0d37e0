import { describe, expect, it } from "vitest";
import { checkMeal } from "../../../core/diet/check.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { dishOf } from "../recipe/bean-pot.ts";
import { shippedPantry } from "../recipe/shelf.ts";
import { dietOf, larder, mealOf } from "./diet-kit.ts";

const diet = dietOf(
  "may-eat: all but what is listed\nfoods: {added salt: avoided}\nallergies: [milk products, fish, tree nuts]\n",
);

/** Carrots in water, with one step. */
const carrots = (step: string): Dish =>
  dishOf(`dish: Carrot Pot
about: Carrots.
yield: 4 bowls
ingredients:
  carrots: 4
  sea-salt: { item: lemon juice, amount: 1 tsp }
steps:
  cook: { do: "${step}", with: [carrots, sea-salt], time: 5 min }
`);

const told = (step: string): readonly string[] =>
  checkMeal(mealOf(carrots(step)), [diet], larder, []).findings.map(
    ({ verdict, ingredient, rule }) => `${verdict}: ${ingredient ?? ""} | ${rule}`,
  );

describe("what only a step speaks of", () => {
  it.each([
    ["Boil the carrots.", []],
    ["Boil the carrots in salted water.", ["cannot tell: salted water | added salt: avoided"]],
    [
      "Toss them with butter.",
      [
        "cannot tell: butter | allergy: milk products",
        "cannot tell: butter | allergy: tree nuts",
        "cannot tell: butter | added salt: avoided",
      ],
    ],
    [
      "Crumble the feta over it.",
      ["cannot tell: feta | allergy: milk products", "cannot tell: feta | added salt: avoided"],
    ],
    ["Stir in a little soy sauce.", ["cannot tell: soy sauce | added salt: avoided"]],
    ["Season with no salt at all.", []],
    ["Cut walnut-sized pieces; fish them out later.", []],
    ["Taste, and add the sea salt.", []],
  ])("[D52] %s", (step, findings) => {
    expect(told(step)).toEqual(findings);
  });

  it("[D52] the dish may be called what it is, but not what may be in it", () => {
    const called = (name: string, step: string) =>
      checkMeal(mealOf({ ...carrots(step), name }), [diet], larder, []).findings.map(
        ({ ingredient }) => ingredient,
      );
    expect(called("Carrot Broth", "Stir the broth.")).toEqual([]);
    expect(called("Carrot Pot", "Stir the broth.")).toContain("broth");
    expect(called("Butter Pot", "Toss it with butter.")).toContain("butter");
  });

  it("[D52] it is told in one sentence, with what would mend it", () => {
    const { findings } = checkMeal(mealOf(carrots("Toss them with butter.")), [diet], larder, []);
    expect(findings[0]).toMatchObject({
      dish: "Carrot Pot",
      why: "A step of Carrot Pot speaks of butter, which is not among its ingredients (milk products: an allergy).",
      mend: "Write butter among the ingredients, or take it out of the step.",
    });
  });

  it("[D52] no dish that ships speaks of what it does not list", async () => {
    const { dishes } = await shippedPantry();
    const strict = dietOf(
      "may-eat: all but what is listed\nfoods: {added salt: avoided, added fat: avoided, added sugar: avoided}\n" +
        "allergies: [milk products, eggs, gluten, soy, tree nuts, peanuts, fish, sesame, mustard, celery]\n",
    );
    const spoken = [...dishes.values()].flatMap((dish) =>
      checkMeal(mealOf(dish), [strict], larder, []).findings.filter(({ why }) => why.startsWith("A step of")),
    );
    expect(spoken.map(({ why }) => why)).toEqual([]);
  });
});
