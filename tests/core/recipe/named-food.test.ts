import { describe, expect, it } from "vitest";
import { readPantry } from "../../../core/recipe/read-pantry.ts";
import { shippedFoods } from "../food/shipped-foods.ts";
import { BEAN_POT } from "./bean-pot.ts";

const { table } = await shippedFoods();

function pantry(dish: string, label = "") {
  return readPantry(
    [
      { shelf: "dishes", name: "bean-pot.yaml", text: dish },
      ...(label === "" ? [] : [{ shelf: "labels", name: "mash.yaml", text: label } as const]),
    ],
    table,
  );
}

const told = (dish: string, label = ""): readonly (readonly [string, number, string, string])[] =>
  pantry(dish, label).mistakes.map(({ file, line, field, sentence }) => [file, line, field, sentence]);

describe("the food that an ingredient names", () => {
  const beans = (food: string): string =>
    BEAN_POT.replace("{ item: cooked beans,", `{ item: cooked beans, food: ${food},`);

  it("[R50] a name in the table or on a label is kept, with what the ingredient weighs", () => {
    const label = "label: bean mash\nserving: 100 g\nvalues: { sodium: 20 mg }\n";
    const { dishes, mistakes } = pantry(beans("bean mash, weighs: 400 g"), label);
    expect(mistakes).toEqual([]);
    expect([...dishes.values()][0]?.ingredients[0]).toMatchObject({
      food: "bean mash",
      weighs: { kind: "measured", low: "400/1", high: "400/1", unit: "g" },
    });
    expect(told(beans("cooked white beans or cooked chickpeas"))).toEqual([]);
  });

  it.each<[string, string]>([
    ["moon dust", 'There is no food called "moon dust" in the table or on a label.'],
    ["cooked chickpae", 'There is no food called "cooked chickpae"; did you mean "cooked chickpea"?'],
    [
      "chickpeas",
      '"chickpeas" may be dry chickpea, cooked chickpea, drained canned chickpea or rinsed canned chickpea, and more; write one of them.',
    ],
    ["cooked chickpea or tofu", '"tofu" may be firm tofu'],
  ])("[R50] %s is a mistake", (food, sentence) => {
    const [one] = told(beans(food));
    expect(one?.slice(0, 3)).toEqual(["dishes/bean-pot.yaml", 6, "ingredients.beans.food"]);
    expect(one?.[3]).toContain(sentence);
  });

  it("[R50] what is no weight is told", () => {
    expect(told(beans("cooked chickpea, weighs: 2 cups"))).toContainEqual([
      "dishes/bean-pot.yaml",
      6,
      "ingredients.beans.weighs",
      '"2 cups" is no weight; write it like 400 g.',
    ]);
  });

  it("[R50] a mistake on a label is told at the label only", () => {
    const label = "label: bean mash\nserving: 0 g\nvalues: { sodium: 20 mg }\n";
    expect(told(beans("bean mash"), label)).toEqual([
      [
        "labels/mash.yaml",
        2,
        "serving",
        "A serving of nothing holds nothing; write the serving as the label prints it.",
      ],
    ]);
  });
});
