import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { inWays } from "../../../core/recipe/in-ways.ts";
import type { CookingMeal, Way } from "../../../core/recipe/model.ts";
import { dishId, stepId } from "../../../core/recipe/model.ts";
import type { Planner } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import { compareCosts, sheetCost } from "../../../core/plan/sheet-cost.ts";
import type { SheetCost } from "../../../core/plan/sheet-cost.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { chooseWays, coldStart, inBestWays } from "../../../core/plan/ways.ts";
import { forked, kitchenWith, pan, patties, roast, tray, way } from "./forked-meals.ts";
import { at, burner, dish, five, meal, mins, oven } from "./small-meals.ts";

/** What the evening costs with these ways of cooking its dishes. */
function priceOf(of: CookingMeal, ways: readonly string[]): SheetCost {
  const taken = ways.map((name, index) => ({ dish: dishId(`d${index}`), step: stepId("cook"), way: name }));
  const cooked = inWays(of, taken);
  const input = { ...coldStart(cooked, null, five), tasks: expandTasks(cooked) };
  return sheetCost(input, plan(input));
}

describe("many steps with ways", () => {
  const long = (minutes: number): Way => way("in a pan", { time: mins(minutes), needs: [burner] });
  const short = (minutes: number): Way => way("in the oven", { time: mins(minutes), needs: [oven(400)] });
  const several = (count: number) =>
    meal(
      Array.from({ length: count }, (_, index) =>
        dish(`d${index}`, [forked("cook", [long(20 + index), short(18 + 2 * index)])]),
      ),
      kitchenWith({ burners: 2 }),
    );

  const counting = () => {
    const seen = new Set<string>();
    const planner: Planner = (input) => {
      seen.add(input.meal.dishes.map(({ steps }) => steps[0]?.ways?.taken).join());
      return plan(input);
    };
    return { seen, planner };
  };

  it("[P106] up to 64 combinations are all tried, and none is better than the one chosen", () => {
    const of = several(6);
    const { seen, planner } = counting();
    const choices = chooseWays(coldStart(of, null, five), planner);
    expect(seen.size).toBe(64);
    const mine = priceOf(
      of,
      choices.map((one) => one.way),
    );
    for (const ways of seen)
      expect(compareCosts(priceOf(of, ways.split(",")), mine)).toBeGreaterThanOrEqual(0);
  });

  it("[P106] of more, one change after another is made until none helps", () => {
    const of = several(8);
    const { seen, planner } = counting();
    const choices = chooseWays(coldStart(of, null, five), planner);
    expect(seen.size).toBeLessThan(100);
    const names = choices.map((one) => one.way);
    const mine = priceOf(of, names);
    expect(
      compareCosts(
        mine,
        priceOf(
          of,
          names.map(() => "in a pan"),
        ),
      ),
    ).toBeLessThan(0);
    names.forEach((name, at) => {
      const other = name === "in a pan" ? "in the oven" : "in a pan";
      expect(compareCosts(priceOf(of, names.with(at, other)), mine)).toBeGreaterThanOrEqual(0);
    });
  });

  it("[P107] the same meal gets the same ways and reasons, and steps without ways are left alone", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.option(fc.integer({ min: 30, max: 200 })),
        (count, serveAt) => {
          const of = meal([...several(count).dishes, roast(40)]);
          const once = inBestWays(of, serveAt === null ? null : at(serveAt), five);
          expect(inBestWays(of, serveAt === null ? null : at(serveAt), five)).toEqual(once);
          expect(once.dishes.at(-1)).toBe(of.dishes.at(-1));
        },
      ),
      { numRuns: 20, seed: 7 },
    );
  });

  it("[P108] every other way has its reason, the next best first, and a reason is said in one breath", () => {
    const slow = way("on a low fire", { time: mins(90), needs: [burner] });
    const [choice] = chooseWays(coldStart(meal([patties([slow, pan, tray()])]), null, five));
    expect(choice?.over.map((one) => one.way)).toEqual(["in a pan", "on a low fire"]);
    for (const { way: name, because } of choice?.over ?? []) {
      expect(because).toContain(name);
      expect(`Cook in the oven: ${because}.`.split(" ").length).toBeLessThanOrEqual(25);
    }
  });
});
