import { describe, expect, it } from "vitest";
import type { Diet } from "../../../core/diet/diet.ts";
import type { EatenMeal } from "../../../core/diet/eaten.ts";
import { dishId, type CookingMeal } from "../../../core/recipe/model.ts";
import { checkWeek, type WeekCheck } from "../../../core/week/check-week.ts";
import { readWeek } from "../../../core/week/read-week.ts";
import type { Sitting, Week } from "../../../core/week/week.ts";
import { butOf, dishWith, larder, limitsOf, mealOf } from "../diet/diet-kit.ts";

const named = (name: string, meal: CookingMeal): CookingMeal => ({ ...meal, name });
const soup = named("Soup Night", mealOf(dishWith(["2 cups dry lentils", "1 onion"], 4, "Soup")));
const rice = named("Rice Night", mealOf(dishWith(["2 cups dry long-grain white rice"], 4, "Rice")));

const cook = (meal: CookingMeal, ...diets: readonly Diet[]): Sitting => ({ kind: "cooked", meal, diets });
const eat = (dish: string, servings: number | null = null): Sitting => {
  return { kind: "leftover", dish: dishId(dish), servings };
};

/** A week that begins on Monday; a day without sittings is left out. */
function week(...days: readonly (readonly Sitting[])[]): Week {
  const names = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;
  return {
    name: "A week",
    eaters: 2,
    days: days.flatMap((sittings, number) => {
      const day = names[number];
      return day === undefined || sittings.length === 0 ? [] : [{ day, number, sittings }];
    }),
  };
}

const check = (of: Week, eaten: readonly EatenMeal[] = []): WeekCheck => checkWeek(of, larder, eaten);
const troubles = ({ days }: WeekCheck): readonly string[] =>
  days.flatMap(({ sittings }) => sittings.flatMap((one) => one.troubles));

describe("a week against a diet", () => {
  it("[D40] what was eaten before counts, in the week and in the log", () => {
    const diet = butOf("rice: once a week");
    const verdicts = (of: WeekCheck) =>
      of.days.map(({ sittings }) => sittings.map((one) => one.check?.verdict));
    expect(verdicts(check(week([cook(rice, diet)], [cook(soup, diet)], [cook(rice, diet)])))).toEqual([
      ["allowed"],
      ["allowed"],
      ["not allowed"],
    ]);
    const eaten = [{ daysAgo: 5, dishes: rice.dishes }];
    expect(verdicts(check(week([cook(rice, diet)]), eaten))).toEqual([["not allowed"]]);
    expect(verdicts(check(week([], [], [cook(rice, diet)]), eaten))).toEqual([["allowed"]]);
  });

  it("[D40] what is left counts as eaten, by the diets of its meal, on the day that it is eaten", () => {
    const diet = butOf("rice: once a week");
    const { verdict, days } = check(week([cook(rice, diet)], [eat("rice")]));
    expect([verdict, days[1]?.sittings[0]?.check?.verdict]).toEqual(["not allowed", "not allowed"]);
    const limit = limitsOf("at most 300 kcal energy in a day");
    // 1,650 kcal in two cups of dry lentils (USDA SR28 16069, 192 g a cup) make 345 a serving with the onion.
    expect(check(week([cook(soup, limit)])).verdict).toBe("not allowed");
  });
});

describe("what is left, in a week", () => {
  it("[D41] is eaten while it keeps, the oldest first, and what is over is told", () => {
    const all = check(week([cook(soup)], [eat("soup")]));
    expect([all.verdict, troubles(all), all.unused]).toEqual(["allowed", [], []]);
    const some = check(week([cook(soup)], [eat("soup", 1)]));
    expect(some.unused).toEqual([
      "one serving of Soup from Monday is in no meal: eat by Thursday or freeze (USDA FSIS, Leftovers and Food Safety).",
    ]);
    expect(some.verdict).toBe("allowed");
  });

  /** USDA FSIS, Leftovers and Food Safety: three to four days in the fridge; the stricter figure holds. */
  it("[D42] too old, too little, or nothing at all: a sentence, and the week is not allowed", () => {
    const old = check(week([cook(soup)], [], [], [], [eat("soup")]));
    expect(troubles(old)).toEqual([
      "Soup of Monday keeps 3 days in the fridge (USDA FSIS, Leftovers and Food Safety); freeze it, or eat it before Friday.",
    ]);
    expect(old.verdict).toBe("not allowed");
    expect(troubles(check(week([cook(soup)], [], [], [eat("soup")])))).toEqual([]);
    expect(troubles(check(week([cook(soup)], [eat("soup", 3)])))).toEqual([
      "Of Soup 2 servings are left, and 3 are wanted.",
    ]);
    expect(troubles(check(week([eat("soup")])))).toEqual([
      "Nothing is left of soup on Monday; cook more of it before.",
    ]);
  });

  it("[D42] a dish that does not feed all who eat is told", () => {
    const small = named("Small", mealOf(dishWith(["1 onion"], 1, "Bite")));
    expect(troubles(check(week([cook(small)])))).toEqual(["Bite makes one serving, and 2 eat."]);
  });
});

describe("a week's file", () => {
  it("[D43] is read whole, with the gaps between its days", () => {
    const { week: read, mistakes } = readWeek(
      "weeks/w.yaml",
      "week: W\neaters: 2\ndays:\n  saturday: [a-meal, { meal: other, servings: { pot: 6 } }]\n  tuesday: [{ leftover: pot, servings: 3 }]\n",
    );
    expect(mistakes).toEqual([]);
    expect(read).toEqual({
      name: "W",
      eaters: 2,
      days: [
        {
          day: "saturday",
          number: 0,
          sittings: [
            { kind: "cooked", meal: "a-meal", servings: {} },
            { kind: "cooked", meal: "other", servings: { pot: 6 } },
          ],
        },
        { day: "tuesday", number: 3, sittings: [{ kind: "leftover", dish: "pot", servings: 3 }] },
      ],
    });
  });

  it.each([
    ["week: W\ndays:\n  monday: [a]\n", 1, '"eaters" is missing here'],
    ["week: W\neaters: 0\ndays:\n  monday: [a]\n", 2, '"eaters" must be at least 1'],
    ["week: W\neaters: 2\ndays: {}\n", 3, "This week has no days; write one."],
    ["week: W\neaters: 2\ndays:\n  someday: [a]\n", 4, "someday"],
    [
      "week: W\neaters: 2\ndays:\n  monday: [a]\n  wednesday: [a]\n  tuesday: [a]\n",
      6,
      "tuesday stands in the wrong place; write the days in their order.",
    ],
  ])("[D43] %j: line %d, %s", (text, line, sentence) => {
    const { week: read, mistakes } = readWeek("weeks/w.yaml", text);
    expect(read).toBeNull();
    expect(mistakes.map((one) => [one.line, one.sentence.includes(sentence)])).toContainEqual([line, true]);
  });
});
