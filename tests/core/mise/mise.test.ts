import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import type { Evening, Preparation } from "../../../core/mise/mise.ts";
import { merged, miseOf, portionsOf, preparedOf } from "../../../core/mise/mise.ts";
import { rawCaution, sayPreparation, writePreparation } from "../../../core/mise/say-mise.ts";
import { plan } from "../../../core/plan/plan.ts";
import { taskId } from "../../../core/plan/model.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { coldStart } from "../../../core/plan/ways.ts";
import type { CookingMeal, Dish, Step } from "../../../core/recipe/model.ts";
import { dishId, ingredientId, mealId } from "../../../core/recipe/model.ts";
import { sumAmounts } from "../../../core/units/sum-amounts.ts";
import { formatAmount, measured } from "../../../core/units/amount.ts";
import { ratio } from "../../../core/units/rational.ts";
import { amount, at, step } from "../cook/supper.ts";
import { evening, give } from "../talk/supper.ts";

/** A line of a dish: its name, how much, what is done to it, and the steps that take it with how much. */
type Line = readonly [
  item: string,
  total: string,
  how: string | null,
  ...uses: readonly (readonly [string, string])[],
];

function dish(name: string, steps: readonly Step[], ...lines: readonly Line[]): Dish {
  return {
    id: dishId(name),
    name,
    says: [],
    about: "",
    cautions: [],
    yield: { servings: 4, of: "plates" },
    ingredients: lines.map(([item, total, preparation]) => ({
      id: ingredientId(item.replaceAll(" ", "-")),
      item,
      amount: amount(total),
      preparation,
      optional: false,
      food: null,
      weighs: null,
      swaps: [],
    })),
    steps: steps.map((one) => ({
      ...one,
      uses: lines.flatMap(([item, , , ...uses]) =>
        uses
          .filter(([id]) => id === one.id)
          .map(([, much]) => ({ ingredient: ingredientId(item.replaceAll(" ", "-")), amount: amount(much) })),
      ),
    })),
  };
}

const kitchen: CookingMeal["kitchen"] = { burners: 4, ovens: [], appliances: [] };

function miseFor(...dishes: readonly Dish[]): readonly Preparation[] {
  const meal: CookingMeal = { id: mealId("try"), name: "Try", dishes, kitchen };
  const input = { ...coldStart(meal, null, at(0), []), tasks: expandTasks(meal) };
  return miseOf({ ...input, prepared: new Set() }, plan(input), at(0));
}

const eveningOf = (log: MealLog, minute: number) => {
  if (log.session === null) throw new Error("no meal");
  return { session: log.session, sheet: runSheetOf(log.session, at(minute)) };
};

const told = (list: readonly Preparation[]): readonly string[] => list.map(sayPreparation);

describe("mise en place", () => {
  it("[M3] one food over several dishes is one preparation, with what goes where", () => {
    const list = miseFor(
      dish("Soup", [step("boil", "boil the soup")], ["garlic", "2 cloves", "minced", ["boil", "2 cloves"]]),
      dish("Sauce", [step("stir", "stir the sauce")], ["garlic", "3 cloves", "minced", ["stir", "3 cloves"]]),
    );
    expect(told(list)).toEqual(["mince five cloves of garlic: two for the soup, three for the sauce"]);
    expect(list.map(writePreparation)).toEqual(["mince 5 cloves of garlic: 2 for the soup, 3 for the sauce"]);
  });

  it("[M3] sums are exact, ranges stay ranges, and what cannot be added stands side by side", () => {
    const list = miseFor(
      dish("Soup", [step("boil", "boil the soup")], ["dill", "1/3 cup", "chopped", ["boil", "1/3 cup"]]),
      dish("Sauce", [step("stir", "stir the sauce")], ["dill", "1-2 tbsp", "chopped", ["stir", "1-2 tbsp"]]),
      dish("Slaw", [step("toss", "toss the slaw")], ["dill", "1 bunch", "chopped", ["toss", "1 bunch"]]),
    );
    const [sums] = list.map(({ amounts }) => amounts.map(formatAmount));
    // 1/3 cup and one to two tablespoons of which sixteen make a cup: 19/48 to 11/24 cup.
    expect(sums).toEqual(["19/48 to 11/24 cup", "1 bunch"]);
    expect(told(list)[0]).toBe(
      "chop about three eighths to half a cup of dill and one bunch: a third of a cup for the soup, " +
        "one bunch for the slaw, one to two tablespoons for the sauce",
    );
  });

  it("[M4] what a step tells the cook to do itself is not told twice; the rest of it is", () => {
    const cut: Step = {
      ...step("cut", "cut the salad"),
      do: "Peel the carrots, cut them up, and mince the green chili.",
    };
    const list = miseFor(
      dish(
        "Salad",
        [cut],
        ["carrots", "3", "peeled and cut into sticks", ["cut", "3"]],
        ["green chili", "1", "seeded and minced", ["cut", "1"]],
        ["parsley", "1 cup", "chopped", ["cut", "1 cup"]],
      ),
    );
    expect(told(list)).toEqual(["seed one green chili", "chop one cup of parsley"]);
  });

  it("[M4] a verb that belongs to another food tells nothing of this one", () => {
    const top: Step = {
      ...step("top", "top the carrots"),
      do: "Chop the parsley and scatter it over the carrots with the dill.",
    };
    const list = miseFor(
      dish(
        "Carrots",
        [top],
        ["carrots", "3", "chopped", ["top", "3"]],
        ["parsley", "1 cup", "chopped", ["top", "1 cup"]],
        ["dill", "1 tbsp", "chopped", ["top", "1 tbsp"]],
      ),
    );
    expect(told(list)).toEqual(["chop three carrots", "chop one tablespoon of dill"]);
  });

  it("[M4] an earlier step tells it for a later one only where it takes none of the food for itself", () => {
    const chop: Step = { ...step("chop", "chop all"), do: "Mince the garlic and chop the dill." };
    const mix: Step = {
      ...step("mix", "mix it", { after: [{ step: chop.id, atLeast: 0 as never, atMost: null }] }),
      do: "Mix all.",
    };
    const list = miseFor(
      dish(
        "Sauce",
        [chop, mix],
        ["garlic", "3 cloves", "minced", ["chop", "1 clove"], ["mix", "2 cloves"]],
        ["dill", "1 cup", "chopped", ["mix", "1 cup"]],
      ),
    );
    expect(told(list)).toEqual(["mince two cloves of garlic"]);
  });

  it("[M2] words that are not understood are told as the recipe has them", () => {
    const list = miseFor(
      dish(
        "Plums",
        [step("stew", "stew the plums")],
        ["plums", "1 lb", "ripe but firm", ["stew", "1 lb"]],
        ["white beans", "2 cups", "no salt added, drained and rinsed", ["stew", "2 cups"]],
      ),
    );
    expect(told(list)).toEqual([
      "one pound of plums, ripe but firm",
      "drain and rinse two cups of white beans, no salt added",
    ]);
  });

  it("[M5] what has gone in is left out, what was ticked off too, and what is in hand is still there", () => {
    const fresh = evening();
    const list = (log: MealLog): readonly string[] => {
      const { session, sheet } = eveningOf(log, 5);
      return told(miseOf(session, sheet, at(5)));
    };
    expect(list(fresh)).toContain("mince five cloves of garlic: one for the flatbreads, four for the stew");
    const chopped = give(fresh, 4, { type: "FinishTask", task: taskId("lantern-stew/chop") });
    expect(list(chopped)).toContain("mince three cloves of garlic: one for the flatbreads, two for the stew");
    const { session, sheet } = eveningOf(chopped, 5);
    const garlic = miseOf(session, sheet, at(5)).find(({ food }) => food === "garlic");
    const portions = garlic?.portions.map(({ id }) => id) ?? [];
    const ticked = give(chopped, 5, { type: "FinishPreparing", portions });
    expect(list(ticked).join()).not.toContain("garlic");
    const then = eveningOf(ticked, 5);
    expect(told(preparedOf(then.session, then.sheet))).toEqual([
      "mince three cloves of garlic: one for the flatbreads, two for the stew",
    ]);
    expect(list(give(ticked, 6, { type: "ReopenPreparing", portions }))).toEqual(list(chopped));
    expect(list(give(ticked, 6, { type: "UndoLast" }))).toEqual(list(chopped));
  });

  it("[M6] nothing is lost and nothing doubled: every portion stands in one preparation, and sums come out", () => {
    const items = ["garlic", "red onion", "dill", "carrots"];
    const hows = [
      "minced",
      "finely chopped",
      "rinsed and picked over",
      "ripe but firm",
      "no salt added, drained",
    ];
    const units = ["clove", "tbsp", "cup", "piece", "g"] as const;
    const line = fc.record({
      item: fc.constantFrom(...items),
      how: fc.constantFrom(...hows),
      low: fc.integer({ min: 1, max: 40 }),
      more: fc.integer({ min: 0, max: 5 }),
      unit: fc.constantFrom(...units),
      minute: fc.integer({ min: 0, max: 90 }),
    });
    const lines = fc.array(line, { maxLength: 12 });
    fc.assert(
      fc.property(lines, (drawn) => {
        const dishes = drawn.map(({ item, how, low, more, unit }, index): Dish => {
          const made = dish(`Dish ${index}`, [step("mix", "mix it")], [item, "1", how, ["mix", "1"]]);
          const much = measured(ratio(low, 6), unit, ratio(low + more, 6));
          return {
            ...made,
            ingredients: made.ingredients.map((one) => ({ ...one, amount: much })),
            steps: made.steps.map((one) => ({
              ...one,
              uses: one.uses.map((use) => ({ ...use, amount: much })),
            })),
          };
        });
        const meal: CookingMeal = { id: mealId("try"), name: "Try", dishes, kitchen };
        const tasks = expandTasks(meal);
        const sheet = {
          entries: tasks.map(({ id }, index) => ({
            task: id,
            start: at(drawn[index]?.minute ?? 0),
            look: at(99),
            end: at(99),
            lanes: [],
            moments: [],
            slack: 0 as never,
          })),
          ovenMoves: [],
          readyAt: at(99),
          late: 0 as never,
          broken: [],
        };
        const input: Evening = { tasks, progress: new Map(), prepared: new Set() };
        const all = portionsOf(input, sheet);
        const list = miseOf(input, sheet, at(0));
        expect(all.length).toBe(drawn.length);
        expect(list.flatMap(({ portions }) => portions.map(({ id }) => id)).toSorted()).toEqual(
          all.map(({ id }) => id).toSorted(),
        );
        for (const { amounts, portions, neededAt } of list) {
          expect(amounts).toEqual(sumAmounts(portions.map((one) => one.amount)));
          expect(neededAt).toBe(Math.min(...portions.map((one) => one.neededAt)));
        }
        expect(list.map(sayPreparation).toSorted()).toEqual(merged(all).map(sayPreparation).toSorted());
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  // Keep raw meat, poultry, seafood and eggs apart and use a separate board: US FDA, Safe Food Handling (from memory).
  it("[M8] raw meat, fish and eggs are cut on a board of their own, and the caution is told", () => {
    const list = miseFor(
      dish(
        "Stew",
        [step("boil", "boil the stew")],
        ["chicken thighs", "1 lb", "cubed", ["boil", "1 lb"]],
        ["carrots", "2", "sliced", ["boil", "2"]],
      ),
    );
    expect(list.map(({ food, place }) => [food, place])).toEqual([
      ["chicken thighs", "raw"],
      ["carrots", "board"],
    ]);
    expect(rawCaution(list)).toMatch(/a board and a knife of their own/);
    expect(rawCaution(list.slice(1))).toBeNull();
  });

  it("[M5] a portion that no dish has cannot be ticked off", () => {
    const stranger = "lantern-stew/chop/saffron" as never;
    expect(() => give(evening(), 1, { type: "FinishPreparing", portions: [stranger] })).toThrow();
  });
});
