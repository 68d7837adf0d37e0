import { readFile, readdir } from "node:fs/promises";
import { parse } from "yaml";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { emptyLog, appendEvents } from "../../../core/cook/fold.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import { recipeSchemas } from "../../../core/recipe/json-schema.ts";
import { heardAs } from "../../../core/recipe/read-meal.ts";
import type { Step } from "../../../core/recipe/model.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { instant } from "../../../core/units/quantity.ts";
import { compareHeat } from "../../../core/units/temperature.ts";
import { BEAN_POT, spoilt } from "./bean-pot.ts";
import { shippedPantry } from "./shelf.ts";

const pantry = await shippedPantry();
const folder = new URL("../../../recipes/", import.meta.url);
const supper = pantry.meals.find(({ id }) => id === "welcome-supper");
const dishes = [...pantry.dishes.values()];
const steps = dishes.flatMap((dish) => dish.steps);
const some = (has: (step: Step) => boolean): boolean => steps.some(has);

describe("the recipes of the lightship Marigold", () => {
  it("[R25] all load without a mistake: at least ten dishes and three meals", () => {
    expect(pantry.mistakes).toEqual([]);
    expect(dishes.length).toBeGreaterThanOrEqual(10);
    expect(pantry.meals.map(({ id }) => id)).toEqual([
      "fog-bell-breakfast",
      "slack-water-lunch",
      "welcome-supper",
    ]);
  });

  it.each(pantry.meals)("[R25] $name can be cooked, and its sheet breaks no limit", (meal) => {
    const cooking = cookingMeal(meal, pantry.dishes);
    if (!cooking.ok) throw new Error(cooking.error);
    const at = instant(0);
    const happening = { type: "MealBegun", meal: cooking.value, serveAt: null } as const;
    const { session } = appendEvents(emptyLog, [{ seq: 1, at, command: "begin", happening }]);
    if (session === null) throw new Error("the meal did not begin");
    const sheet = runSheetOf(session, at);
    expect(sheet.broken).toEqual([]);
    expect(sheet.entries).toHaveLength(session.tasks.length);
  });

  it("[R25] the welcome supper has at least four dishes, 18 to 28 steps, and is for half past six", () => {
    const of = supper?.dishes.map(({ dish }) => pantry.dishes.get(dish)?.steps.length ?? 0) ?? [];
    const all = of.reduce((sum, count) => sum + count, 0);
    expect(of.length).toBeGreaterThanOrEqual(4);
    expect(all).toBeGreaterThanOrEqual(18);
    expect(all).toBeLessThanOrEqual(28);
    expect(supper?.serveAt).toBe(18 * 60 + 30);
  });

  it("[R25] between them they use everything that the format has", () => {
    const links = steps.flatMap((step) => step.after);
    expect({
      ovenRange: some(({ needs }) =>
        needs.some((need) => need.kind === "oven" && compareHeat(need.heat.low, need.heat.high) < 0),
      ),
      simmerWithAttention: some(
        ({ attend, needs }) => attend.length > 0 && needs.some(({ kind }) => kind === "burner"),
      ),
      everyKindOfMoment: new Set(steps.flatMap(({ attend }) => attend.map(({ kind }) => kind))).size,
      everyKindOfNeed: new Set(steps.flatMap(({ needs }) => needs.map(({ kind }) => kind))).size,
      panWithPartOfABatch: some(({ batch }) => batch !== null && batch.holds < batch.of),
      madeAhead: some(({ ahead }) => ahead !== null),
      donenessBetweenEarliestAndLatest: some(({ until, time }) => until !== null && time.low < time.high),
      hardLatestWithCeiling: some(({ latest, extend }) => latest === "hard" && extend !== null),
      shortestWait: links.some(({ atLeast }) => atLeast > 0),
      longestWait: links.some(({ atMost }) => atMost !== null && atMost > 0),
      atOnce: links.some(({ atMost }) => atMost === 0),
      dressedLast: some(({ endsBeforeServing }) => endsBeforeServing !== null),
      held: some(({ hold }) => hold !== null),
      optional: dishes.some((dish) => dish.ingredients.some(({ optional }) => optional)),
      swapWithLessWater: dishes.some((dish) =>
        dish.ingredients.some(({ swaps }) =>
          swaps.some(({ effect, changes }) => effect !== null && changes.length > 0),
        ),
      ),
      amountOverTwoSteps: dishes.some((dish) =>
        dish.ingredients.some(
          ({ id }) => dish.steps.filter(({ uses }) => uses.some((use) => use.ingredient === id)).length > 1,
        ),
      ),
      cautions: dishes.every(({ cautions }) => cautions.length > 0),
    }).toEqual({
      ovenRange: true,
      simmerWithAttention: true,
      everyKindOfMoment: 3,
      everyKindOfNeed: 5,
      panWithPartOfABatch: true,
      madeAhead: true,
      donenessBetweenEarliestAndLatest: true,
      hardLatestWithCeiling: true,
      shortestWait: true,
      longestWait: true,
      atOnce: true,
      dressedLast: true,
      held: true,
      optional: true,
      swapWithLessWater: true,
      amountOverTwoSteps: true,
      cautions: true,
    });
  });

  it("[R25] within the supper two dishes share the oven at one heat, and foods go into several dishes", () => {
    const cooked = supper?.dishes.flatMap(({ dish }) => pantry.dishes.get(dish) ?? []) ?? [];
    const heats = cooked.flatMap((dish) =>
      dish.steps.flatMap(({ needs }) => needs.flatMap((need) => (need.kind === "oven" ? [need.heat] : []))),
    );
    expect(heats).toHaveLength(2);
    expect(new Set(heats.map(({ low }) => low.degrees)).size).toBe(2);
    expect(Math.max(...heats.map(({ low }) => low.degrees))).toBeLessThanOrEqual(
      Math.min(...heats.map(({ high }) => high.degrees)),
    );
    const uses = (item: string): number =>
      cooked.filter(({ ingredients }) => ingredients.some((one) => one.item === item)).length;
    expect({ lemon: uses("lemon juice"), garlic: uses("garlic"), orange: uses("orange juice") }).toEqual({
      lemon: 4,
      garlic: 2,
      orange: 2,
    });
  });

  it("[R25] the names of the dishes of a meal share no word with each other", () => {
    for (const meal of pantry.meals) {
      const words = meal.dishes.flatMap(({ dish }) => [
        ...new Set((pantry.dishes.get(dish)?.says ?? []).flatMap((name) => heardAs(name).split(" "))),
      ]);
      const twice = words.filter((word, index) => words.indexOf(word) !== index && word !== "with");
      expect(twice).toEqual([]);
    }
  });
});

describe("the schema for editors", () => {
  /** The schema as an editor has it: read back from its text. */
  const schemaOf = (name: string): z.ZodType => {
    return z.fromJSONSchema(JSON.parse(recipeSchemas().get(name) ?? "") as z.core.JSONSchema.BaseSchema);
  };

  it("[R26] the written schemas are those of the reader; `npx tsx tools/recipe-schemas.ts` writes them", async () => {
    const names = (await readdir(new URL("schema/", folder))).toSorted();
    expect(names).toEqual([...recipeSchemas().keys()].map((name) => `${name}.json`));
    for (const [name, text] of recipeSchemas()) {
      expect(await readFile(new URL(`schema/${name}.json`, folder), "utf8")).toBe(text);
    }
  });

  it("[R26] every recipe names its schema and is taken by it", async () => {
    for (const [shelf, name] of [
      ["dishes", "dish"],
      ["meals", "meal"],
      ["kitchens", "kitchen"],
      ["labels", "label"],
    ] as const) {
      const schema = schemaOf(name);
      for (const file of await readdir(new URL(`${shelf}/`, folder))) {
        const text = await readFile(new URL(`${shelf}/${file}`, folder), "utf8");
        expect(text.split("\n")[0]).toBe(`# yaml-language-server: $schema=../schema/${name}.json`);
        expect(schema.safeParse(parse(text)).error).toBeUndefined();
      }
    }
  });

  it("[R26] the schema refuses a misspelt key, a missing one and another kind of value", () => {
    expect(schemaOf("dish").safeParse(parse(BEAN_POT)).success).toBe(true);
    for (const [from, to] of [
      ["time: 20 min", "tiem: 20 min"],
      ["    time: 20 min\n", ""],
      ["hands: off", "hands: [off]"],
    ] as const) {
      expect(schemaOf("dish").safeParse(parse(spoilt(BEAN_POT, from, to))).success).toBe(false);
    }
  });
});
