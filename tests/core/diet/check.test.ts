import { describe, expect, it } from "vitest";
import { checkMeal } from "../../../core/diet/check.ts";
import { ingredientId } from "../../../core/recipe/model.ts";
import { butOf, checkOf, dietOf, dishWith, larder, limitsOf, mealOf } from "./diet-kit.ts";

const NO_SALT = butOf("added salt: { rule: avoided, because: None is added here. }");

describe("what is told of a meal", () => {
  it("[D21] which diet, rule, dish and ingredient, how much, why, the reason, what would mend it", () => {
    const { findings, verdict, ingredients } = checkOf(NO_SALT, ["2 tbsp miso", "1 onion"]);
    expect(findings).toEqual([
      {
        diet: "Test Diet",
        rule: "added salt: avoided",
        dish: "Pot",
        ingredient: "miso",
        verdict: "not allowed",
        why: "Miso is made with added salt, which is avoided.",
        howMuch: "two tablespoons of miso",
        because: "None is added here.",
        mend: "Leave miso out, or take another food for it.",
        standIns: null,
      },
    ]);
    expect([verdict, ingredients.map((one) => one.verdict)]).toEqual([
      "not allowed",
      ["not allowed", "allowed"],
    ]);
  });

  it.each([
    ["2 tbsp salted butter", "Take two tablespoons of unsalted butter instead."],
    ["1 cup canned tomatoes", "Take one cup of unsalted canned tomatoes instead."],
    [
      "1 cup canned chickpeas, drained",
      "Take one cup of cooked chickpeas instead. Have it cooked before it goes in.",
    ],
    // Common practice, no source: a can holds about a cup and a half, drained.
    [
      "2 cans canned kidney beans, drained",
      "Take three cups of cooked red kidney beans instead. Have it cooked before it goes in; dried beans need a hard boil first.",
    ],
    ["2 tbsp capers (optional)", "Leave it out; the recipe can do without."],
    ["1 tsp curry powder", "Read the packet, and write in the recipe what it says."],
    ["1 cup moonberries", "Write in the recipe which food moonberries are."],
  ])("[D21] [D31] %s: %s", (line, mend) => {
    expect(checkOf(NO_SALT, [line]).findings.map((one) => one.mend)).toEqual([mend]);
  });

  it("[D21] what the recipe offers instead, where it is allowed", () => {
    const dish = dishWith(["2 tbsp soy sauce"]);
    const offers = ["tamari", "lemon juice"].map((use) => ({ use, amount: null, effect: null, changes: [] }));
    const meal = mealOf({ ...dish, ingredients: dish.ingredients.map((one) => ({ ...one, swaps: offers })) });
    const [finding] = checkMeal(meal, [NO_SALT], larder, []).findings;
    expect(finding?.mend).toBe("Take lemon juice instead, as the recipe offers.");
    // Tamari has salt in it, so only the other stands in.
    expect(finding?.standIns).toEqual({
      dish: "pot",
      ingredient: "i0",
      foods: [{ use: "lemon juice", how: "Two tablespoons of lemon juice." }],
    });
  });

  it("[D21] of a total, what brings the most", () => {
    const lines = ["1 tbsp chili powder", "2 stalks celery", "1 onion"];
    const [finding] = checkOf(limitsOf("at most 20 mg sodium in a serving"), lines).findings;
    expect(finding?.mend).toMatch(/^Most of it comes from chili powder: \d+(\.\d)? mg in a serving\.$/);
    expect([finding?.dish, finding?.ingredient, finding?.rule]).toEqual([
      "Pot",
      null,
      "sodium: at most 20 mg in a serving",
    ]);
  });

  it("[D7] [D21] contradictory diets are told before everything else that cannot be told", () => {
    const more = limitsOf("at least 4000 mg potassium in the meal");
    const less = limitsOf("at most 100 mg potassium in the meal");
    const check = checkMeal(mealOf(dishWith(["1 stalk celery"])), [more, less], larder, []);
    const clash = check.findings.find(({ verdict }) => verdict === "cannot tell");
    expect(clash?.why).toContain("which cannot both be; ask your clinician which holds.");
  });

  it("[D22] potassium and grapefruit, whatever the diet, in the swaps too", () => {
    const lines = ["1 tsp cream of tartar", "1 grapefruit"];
    expect(checkOf(butOf("rice: avoided"), lines).notes).toEqual([
      "Cream of tartar: full of potassium. With kidney trouble or some medicines that is dangerous; ask your clinician first.",
      "Grapefruit: it changes how many medicines work; ask your clinician or pharmacist first.",
    ]);
    const dish = dishWith(["1 tsp black pepper"]);
    const use = { use: "salt substitute", amount: null, effect: null, changes: [] };
    const meal = mealOf({ ...dish, ingredients: dish.ingredients.map((one) => ({ ...one, swaps: [use] })) });
    expect(checkMeal(meal, [], larder, []).notes.join(" ")).toContain("Salt substitute: full of potassium.");
  });

  it("[D8] no diet, nothing against it", () => {
    expect(checkMeal(mealOf(dishWith(["1 tsp salt"])), [], larder, []).verdict).toBe("allowed");
  });

  it("[D11] two diets: the stricter holds", () => {
    const meal = mealOf(dishWith(["1 cup brown rice"]));
    const strict = dietOf("may-eat: all but what is listed\nfoods: {rice: avoided}\n", "Strict");
    const { verdict, findings } = checkMeal(meal, [butOf("rice: allowed"), strict], larder, []);
    expect([verdict, findings.map(({ diet }) => diet)]).toEqual(["not allowed", ["Strict"]]);
  });

  it("[D9] an ingredient is found whatever its id", () => {
    const dish = dishWith(["1 tsp salt"]);
    const named = dish.ingredients.map((one) => ({ ...one, id: ingredientId("lemon") }));
    expect(checkMeal(mealOf({ ...dish, ingredients: named }), [NO_SALT], larder, []).verdict).toBe(
      "not allowed",
    );
  });
});
