import { describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/plan.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import type { PlanInput } from "../../../core/plan/model.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { loadPantry } from "../../../server/pantry/load-pantry.ts";
import { faultsOf } from "./check-sheet.ts";
import { at, five } from "./small-meals.ts";
import { cook } from "./virtual-cook.ts";

const pantry = await loadPantry("recipes");

function evenings(name: string, dishes = pantry.dishes): readonly PlanInput[] {
  const found = pantry.meals.find((meal) => meal.name === name);
  const made = found === undefined ? null : cookingMeal(found, dishes);
  if (made?.ok !== true) throw new Error(`cannot cook ${name}`);
  const tasks = expandTasks(made.value);
  return [null, at(30), at(180)].map((serveAt) => ({
    meal: made.value,
    tasks,
    progress: new Map(),
    ovens: [],
    now: five,
    since: five,
    serveAt,
    lull: null,
    first: [],
    focus: null,
    helpers: [],
    handed: new Map(),
  }));
}

describe.each(pantry.meals.map((meal) => meal.name))("%s", (name) => {
  it("[P33] has a right sheet, and breaks no limit but a serving time that is too soon", () => {
    for (const input of evenings(name)) {
      const sheet = plan(input);
      expect(faultsOf(input, sheet)).toEqual([]);
      expect(sheet.broken.filter((sentence) => !sentence.startsWith("Dinner will be"))).toEqual([]);
      expect(sheet.late > 0).toBe(input.serveAt === at(30));
    }
  });

  it("[P34] has the same sheet in whatever order the recipe files are read", () => {
    expect(evenings(name, new Map([...pantry.dishes].toReversed())).map(plan)).toEqual(
      evenings(name).map(plan),
    );
  });

  it("[P33] is cooked to the end by its sheets", () => {
    for (const input of evenings(name).filter((one) => one.serveAt !== at(30))) {
      const first = plan(input);
      const { sheets, isFinished, endedAt } = cook(input);
      expect(isFinished).toBe(true);
      expect(sheets.flatMap((one) => faultsOf(one.input, one.sheet))).toEqual([]);
      expect(endedAt).toBeLessThanOrEqual(Math.max(first.readyAt, input.serveAt ?? 0) + 2 * 60_000);
    }
  }, 120_000);
});
