import { readFile } from "node:fs/promises";
import { parse } from "yaml";
import { describe, expect, it } from "vitest";
import { dishFile, stepFile } from "../../../core/recipe/dish-file.ts";
import { labelFile } from "../../../core/food/label-file.ts";
import { readLabel } from "../../../core/food/read-label.ts";
import { readPantry } from "../../../core/recipe/read-pantry.ts";
import { shippedFoods } from "../food/shipped-foods.ts";

const { table } = await shippedFoods();
const page = await readFile(new URL("../../../docs/recipe-format.md", import.meta.url), "utf8");
const [dish = "", meal = "", kitchen = "", label = ""] = [...page.matchAll(/```yaml\n(.*?)```/gs)].map(
  (block) => block[1] ?? "",
);

describe("the page about the recipe format", () => {
  it("[R29] its dish, its meal and its kitchen load together without a mistake", () => {
    const { meals, mistakes } = readPantry(
      [
        { shelf: "dishes", name: "filled-peppers.yaml", text: dish },
        { shelf: "meals", name: "deck-dinner.yaml", text: meal },
        { shelf: "kitchens", name: "marigold-galley.yaml", text: kitchen },
      ],
      table,
    );
    expect(mistakes).toEqual([]);
    expect(meals.map(({ name }) => name)).toEqual(["Deck Dinner"]);
  });

  it("[R29] its label is read without a mistake, and uses every key of a label but the values", () => {
    expect(readLabel("labels/oat-drink.yaml", label, table).mistakes).toEqual([]);
    expect(Object.keys(parse(label) as object).toSorted()).toEqual(Object.keys(labelFile.shape).toSorted());
  });

  it("[R29] its dish uses every key of a dish and of a step", () => {
    const written = parse(dish) as { readonly steps: Readonly<Record<string, object>> };
    const stepKeys = Object.values(written.steps).flatMap((step) => Object.keys(step));
    expect(Object.keys(written).toSorted()).toEqual(Object.keys(dishFile.shape).toSorted());
    expect([...new Set(stepKeys)].toSorted()).toEqual(Object.keys(stepFile.shape).toSorted());
  });
});
