import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { mealValues } from "../../core/food/values.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { buyingList } from "../../core/shop/buying-list.ts";
import { fridgeUnknown } from "../../core/shop/from-fridge.ts";
import { toNumber } from "../../core/units/rational.ts";
import { err } from "../../core/units/result.ts";
import { inProgram } from "../../server/cli/in-program.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { TableRules } from "../../server/kitchen/table-rules.ts";
import { loadLabelled } from "../../server/pantry/load-pantry.ts";
import { loadPlaces } from "../../server/pantry/load-places.ts";
import { rehearse } from "../../server/rehearsal/rehearse.ts";
import { readScript } from "../../server/rehearsal/script.ts";
import type { View } from "../../server/rehearsal/stage.ts";

/** The recipes that ship, with chili powder, which has salt in it, where the soup had smoked paprika. */
let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "planted-salt-"));
  cpSync(inProgram("recipes"), folder, { recursive: true });
  const soup = join(folder, "dishes/lentil-soup.yaml");
  const text = readFileSync(soup, "utf8");
  const planted = text.replace("item: smoked paprika", "item: chili powder");
  if (planted === text) throw new Error("the soup has no smoked paprika");
  writeFileSync(soup, planted);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function supper(): Promise<CookingMeal> {
  const meal = (await MealBook.open(folder)).meal("welcome-supper", {});
  if (!meal.ok) throw new Error(meal.error);
  return meal.value;
}

/** An evening in which this is said at its beginning. */
async function after(...said: readonly string[]): Promise<View> {
  const script = readScript(said.join("\n"));
  if (!script.ok) throw new Error(script.error);
  const view = await rehearse({
    meal: await supper(),
    from: 16 * 60,
    serveAt: null,
    script: script.value,
    hear: () => Promise.resolve(err("no recordings here")),
    tell: () => undefined,
  });
  if (!view.ok) throw new Error(view.error);
  return view.value;
}

async function known() {
  const [foods, places] = [await loadLabelled(folder), await loadPlaces(folder)];
  if (!foods.ok || !places.ok) throw new Error("no tables");
  const rules = await TableRules.load(folder, foods.value);
  if (!rules.ok) throw new Error(rules.error);
  const diets = rules.value.dietsFor([]);
  if (!diets.ok) throw new Error(diets.error);
  return { foods: foods.value, places: places.value, rules: rules.value, diets: diets.value };
}

const broken = (check: ReturnType<TableRules["check"]>) =>
  check.findings.filter(({ verdict }) => verdict === "not allowed");

describe("salt that nobody sees in a recipe", () => {
  it("[D30] the check finds it in the chili powder, and a swap of the kitchen mends it", async () => {
    const { rules, diets } = await known();
    const findings = broken(rules.check(await supper(), diets, []));
    expect(findings.map(({ ingredient, rule }) => [ingredient, rule])).toEqual([
      ["chili powder", "added salt: avoided"],
      ["chili powder", expect.stringMatching(/^spices: only /)],
    ]);
    expect(findings[0]).toMatchObject({
      dish: "Smoky Lentil Soup",
      why: "Chili powder is made with added salt, which is avoided.",
      howMuch: "two teaspoons of chili powder",
      mend: expect.stringMatching(/^Take one and a third teaspoons of paprika instead\./) as string,
    });
  });

  it("[D30] said and confirmed, the diet, the totals and the shopping list follow", async () => {
    const { foods, places, rules, diets } = await known();
    const [before, now] = [
      await supper(),
      (await after("use paprika instead of the chili powder", "yes")).session.meal,
    ];
    expect(broken(rules.check(now, diets, []))).toEqual([]);
    const sodium = (meal: CookingMeal): number => toNumber(mealValues(meal, foods).aServing.sodium.high);
    // Two teaspoons of chili powder for four: 5.4 g with 2,867 mg sodium in 100 g (USDA SR28 02009).
    expect(sodium(before) - sodium(now)).toBeGreaterThan(35);
    const list = (meal: CookingMeal) => {
      const { buy } = buyingList({ meals: [meal], foods, places, house: [], fridge: fridgeUnknown });
      return buy.map(({ name }) => name);
    };
    expect(list(before)).toContain("chili powder");
    expect(list(now)).not.toContain("chili powder");
    expect(list(now)).toContain("paprika");
  });

  it("[D30] and so does the run sheet where what stands in cooks longer", async () => {
    const [plain, swapped] = [
      await after("what now"),
      await after("use brown lentils instead of the red lentils", "yes"),
    ];
    expect(swapped.session.swaps).toHaveLength(1);
    expect(swapped.sheet.readyAt - plain.sheet.readyAt).toBeGreaterThan(5 * 60_000);
  });
});
