import { describe, expect, it } from "vitest";
import { hazardCautions, hazardsIn, hazardsOf, withHazards } from "../../../core/keeping/hazards.ts";
import { hazardKinds, hazardWords } from "../../../core/keeping/hazards-table.ts";
import { sources } from "../../../core/keeping/sources-table.ts";
import type { CookingMeal, Dish } from "../../../core/recipe/model.ts";
import { step, supper } from "../cook/supper.ts";
import { shippedFoods } from "../food/shipped-foods.ts";
import { food, pot } from "./pots.ts";

const { table } = await shippedFoods();
const hazards = (...lines: readonly string[]) => hazardsIn(lines.map(food), "", table);
const mealOf = (...dishes: readonly Dish[]): CookingMeal => ({ ...supper, dishes });

describe("hazards of plant cooking", () => {
  it("[G5] beans count as raw unless they are said to be cooked", () => {
    // Source: FDA Bad Bug Book, phytohaemagglutinin: highest in red kidney beans, also in other beans.
    for (const raw of ["kidney beans", "red kidney beans, soaked", "dry cannellini beans", "beans", "rajma"])
      expect([raw, hazards(raw)]).toEqual([raw, ["raw-beans"]]);
    const safe = [
      "canned kidney beans",
      "kidney beans, canned, drained",
      "cooked white beans",
      "green beans",
    ];
    for (const cooked of [...safe, "red lentils", "mung bean sprouts, boiled"])
      expect([cooked, hazards(cooked).includes("raw-beans")]).toEqual([cooked, false]);
  });

  it("[G5] the caution for raw beans says soak, boil in fresh water, and never to slow-cook", () => {
    expect(hazardWords["raw-beans"].caution).toMatch(
      /soak.*five hours.*boil.*thirty minutes.*never slow-cook/i,
    );
  });

  it("[G6] garlic or herbs with oil, sprouts, honey and potatoes", () => {
    expect(hazards("olive oil", "garlic, minced")).toEqual(["garlic-in-oil"]);
    expect(hazards("sunflower oil", "fresh rosemary")).toEqual(["garlic-in-oil"]);
    expect(hazards("garlic", "lemon juice")).toEqual([]);
    expect(hazards("garlic powder", "olive oil")).toEqual([]);
    expect(hazards("alfalfa sprouts")).toEqual(["raw-sprouts"]);
    expect(hazards("Brussels sprouts")).toEqual([]);
    expect(hazards("honey")).toEqual(["honey"]);
    expect(hazards("honeydew melon")).toEqual([]);
    expect(hazards("potatoes")).toEqual(["green-potatoes"]);
    expect(hazards("sweet potatoes")).toEqual([]);
    expect(hazards("potato starch")).toEqual([]);
  });

  it("[G6] potatoes are baked in foil where a step says so", () => {
    const baked = pot("Baked potatoes", ["sweet potatoes"], {
      steps: [step("wrap", "wrap the potatoes", { do: "Wrap each potato in foil." })],
    });
    expect(hazardsOf(baked, table)).toEqual(["potatoes-in-foil"]);
    expect(hazardsOf({ ...baked, steps: [] }, table)).toEqual([]);
  });

  it("[G1] every caution is one sentence and names a source that is listed", () => {
    for (const kind of hazardKinds) {
      const { caution, source } = hazardWords[kind];
      expect(caution).toMatch(/^[A-Z][^.]*\.$/);
      expect(sources[source].name).not.toBe("");
    }
  });

  it("[G7] the caution stands among the dish's own, with its source", () => {
    const chili = pot("Chili", ["kidney beans"], { cautions: ["Steam burns."] });
    const [told] = withHazards(mealOf(chili), table).dishes;
    expect(told?.cautions).toEqual([
      "Steam burns.",
      "Soak dry beans for five hours, pour that water away, and boil them for thirty minutes in fresh water; never slow-cook them from raw. (FDA Bad Bug Book, phytohaemagglutinin.)",
    ]);
    expect(hazardCautions(mealOf(chili), table)).toEqual([`Chili: ${told?.cautions[1] ?? ""}`]);
  });

  it("[G7] what the recipe itself says is not told twice; half of it is told", () => {
    const careful = pot("Chili", ["kidney beans"], {
      cautions: ["Soak the beans overnight and boil them hard for half an hour."],
    });
    expect(withHazards(mealOf(careful), table)).toEqual(mealOf(careful));
    const half = { ...careful, cautions: ["Soak the beans overnight."] };
    expect(hazardCautions(mealOf(half), table)).toHaveLength(1);
    const known = { ...pot("Cake", ["honey"]), cautions: ["No honey for infants under one year."] };
    expect(hazardCautions(mealOf(known), table)).toEqual([]);
  });
});
