import { describe, expect, it } from "vitest";
import { dishId, type CookingMeal } from "../../../core/recipe/model.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { leftoverId, type Leftover } from "../../../core/house/leftover.ts";
import { fridgeAtStart } from "../../../core/week/at-start.ts";
import { checkWeek, type WeekCheck } from "../../../core/week/check-week.ts";
import type { CookedDish } from "../../../core/week/left.ts";
import type { Sitting, Week } from "../../../core/week/week.ts";
import { days, plus } from "../../../core/units/quantity.ts";
import { ratio } from "../../../core/units/rational.ts";
import { at } from "../cook/supper.ts";
import { butOf, dishWith, larder, mealOf } from "../diet/diet-kit.ts";
import { afterSupper, servings, store } from "../house/house-at.ts";

const day = 60 * 24;
const soupDish = { ...dishWith(["2 cups dry lentils", "1 onion"], 4, "Tide soup"), id: dishId("soup") };
const soup: CookingMeal = { ...mealOf(soupDish), name: "Soup Night" };
const diet = butOf("onion: avoided");

/** The soup as it was cooked; of all else nobody knows what is in it. */
const cookedOf =
  (diets: CookedDish["diets"]) =>
  ({ of }: Leftover): CookedDish | null =>
    of?.dish === "soup" ? { meal: soup, dish: soupDish, diets } : null;

const eat = (count: number | null): Sitting => ({ kind: "leftover", dish: dishId("soup"), servings: count });
const cook: Sitting = { kind: "cooked", meal: soup, diets: [] };

/** A week for two that begins on Monday. */
const week = (...all: readonly (readonly Sitting[])[]): Week => ({
  name: "A week",
  eaters: 2,
  days: all.flatMap((sittings, number) => {
    const name = (["monday", "tuesday", "wednesday", "thursday", "friday"] as const)[number];
    return name === undefined || sittings.length === 0 ? [] : [{ day: name, number, sittings }];
  }),
});

/** The week, begun at a minute after five in the afternoon of the first of January, by UTC. */
function check(of: Week, log: HouseLog, minute: number, diets: CookedDish["diets"] = []): WeekCheck {
  const wall = { now: at(minute), utcOffsetMinutes: () => 0 };
  return checkWeek(of, larder, [], fridgeAtStart(log.house, cookedOf(diets), wall));
}
const troubles = (of: WeekCheck): readonly string[] =>
  of.days.flatMap(({ sittings }) => sittings.flatMap((one) => one.troubles));

/** Ready at six on the first; good until six on the fourth (USDA FSIS, the shorter of "3 to 4" days). */
const stored = (count: number, place: "fridge" | "freezer" = "fridge"): HouseLog =>
  afterSupper([130, store("soup", servings(count), place)]);

describe("what is in the fridge as a week begins", () => {
  it("[G21] counts for its meals while it is good, by the diets of the meal that it is of", () => {
    // Begun on the second: the fourth is its third day.
    const all = check(week([eat(1)], [], [eat(2)]), stored(3), day);
    expect([all.verdict, troubles(all), all.unused, all.fridge]).toEqual(["allowed", [], [], []]);
    const against = check(week([eat(1)]), stored(3), day, [diet]);
    expect(against.days[0]?.sittings[0]?.check?.verdict).toBe("not allowed");
    expect(check(week([eat(1)]), stored(3), day).unused).toEqual([
      "2 servings of Tide soup from the fridge are in no meal: eat by Wednesday or freeze (USDA FSIS, Leftovers and Food Safety).",
    ]);
  });

  it("[G21] it is eaten before what the week cooks anew, and what is frozen last of all", () => {
    const both = check(week([cook], [eat(3)]), stored(2), day);
    expect([troubles(both), both.unused]).toEqual([
      [],
      [
        "one serving of Tide soup from Monday is in no meal: eat by Thursday or freeze (USDA FSIS, Leftovers and Food Safety).",
      ],
    ]);
    const frozen = check(week([], [], [], [], [eat(2)]), stored(2, "freezer"), day);
    expect([troubles(frozen), frozen.verdict]).toEqual([[], "allowed"]);
    expect(check(week([eat(1)]), stored(2, "freezer"), day).unused).toEqual([]);
  });

  it("[G22] too old on its day, it does not count; past its day already, it is warned of", () => {
    const late = check(week([eat(1)], [], [], [eat(2)]), stored(3), day);
    expect(troubles(late)).toEqual([
      "Tide soup that is in the fridge now is good until Wednesday (USDA FSIS, Leftovers and Food Safety); freeze it, or eat it before Thursday.",
    ]);
    expect(late.verdict).toBe("not allowed");
    const spent = check(week([eat(2)]), stored(3), day * 6);
    expect(spent.fridge).toEqual(["Tide soup, 3 bowls, in the fridge, is past its day: throw it away."]);
    expect(troubles(spent)).toEqual([
      "Tide soup in the fridge is past its day: throw it away, and cook more of it before Monday.",
    ]);
    expect([spent.verdict, spent.unused]).toEqual(["not allowed", []]);
    // A warning alone is no fault of the week.
    expect(check(week([cook]), stored(3), day * 6).verdict).toBe("allowed");
  });

  it("[G22] what runs out before the evening is not there for that day's dinner", () => {
    // Common practice, no source: dinner from five o'clock on. Ready at noon, it keeps until noon.
    const log = stored(2);
    const leftover = log.house.leftovers.get(leftoverId("soup"));
    if (leftover === undefined) throw new Error("no soup");
    const noon = { ...leftover, useBy: plus(at(-300), days(3)) };
    const house = { ...log.house, leftovers: new Map([[leftover.id, noon]]) };
    const begun = (minute: number) =>
      fridgeAtStart(house, cookedOf([]), { now: at(minute), utcOffsetMinutes: () => 0 });
    expect(begun(day).left.map(({ lastDay }) => lastDay)).toEqual([1]);
    expect(begun(day * 3 - 400)).toMatchObject({
      left: [],
      notes: ["Tide soup, 2 bowls, in the fridge, runs out before this evening: it counts for no meal."],
    });
  });

  it("[G23] of an unknown amount, of unknown making or heated it is told, and counts for no meal", () => {
    const log = afterSupper(
      [130, store("soup", { kind: "words", words: "half a pot" })],
      [131, store("salad", servings(2))],
      [132, store("soup", servings(1), "fridge", "warm")],
      [day, { type: "HeatLeftover", id: leftoverId("warm"), some: null }],
    );
    const told = check(week([eat(1)]), log, day + 10);
    expect(told.fridge).toEqual([
      "Tide soup, 1 bowl, was heated: eat it now; it counts for no meal.",
      "Tide salad, 2 plates, in the fridge: nobody knows what is in it, so it counts for no meal.",
      "Tide soup, half a pot, in the fridge: nobody knows how many servings, so it counts for no meal.",
    ]);
    expect(troubles(told)).toEqual(["Nothing is left of soup on Monday; cook more of it before."]);
    expect(check(week([eat(1)]), log, day + 200).fridge[0]).toBe(
      "Tide soup, 1 bowl, was heated more than two hours ago: throw it away.",
    );
    const half = check(
      week([eat(1)]),
      afterSupper([130, store("soup", { kind: "servings", servings: ratio(1, 2) })]),
      day,
    );
    expect(troubles(half)).toEqual(["Of Tide soup 0.5 servings are left, and 1 are wanted."]);
  });
});
