import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Due } from "../../../core/mise/order.ts";
import { inOrder, lateness } from "../../../core/mise/order.ts";
import { at } from "../cook/supper.ts";

describe("the order of mise en place", () => {
  it("[M7] the same food and the same place stand together where it makes nothing late", () => {
    const due = (food: string, minute: number, place: Due["place"] = "board"): Due => ({
      food,
      place,
      neededAt: at(minute),
    });
    const foods = (list: readonly Due[], now = 0): readonly string[] =>
      inOrder(list, at(now)).map(({ food }) => food);
    const list = [due("garlic", 20), due("lentils", 30, "sink"), due("carrots", 40), due("garlic", 60)];
    expect(foods(list)).toEqual(["garlic", "garlic", "carrots", "lentils"]);
    // Two minutes each: the lentils are needed at once behind the garlic, so nothing may stand before them.
    const pressing = [due("garlic", 2), due("lentils", 4, "sink"), due("carrots", 40), due("garlic", 60)];
    expect(foods(pressing)).toEqual(["garlic", "lentils", "carrots", "garlic"]);
  });

  it("[M7] no preparation is moved behind the step that uses it, or made later than in the order of need", () => {
    const one = fc.record({
      food: fc.constantFrom("garlic", "lentils", "carrots"),
      place: fc.constantFrom<Due["place"]>("board", "sink", "raw", null),
      neededAt: fc.integer({ min: 0, max: 40 }).map((minute) => at(minute)),
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 14 }), (list) => {
        const order = inOrder(list, at(0));
        expect(new Set(order)).toEqual(new Set(list));
        expect(order.length).toBe(list.length);
        const byNeed = lateness(
          list.toSorted((a, b) => a.neededAt - b.neededAt),
          at(0),
        );
        for (const [due, late] of lateness(order, at(0)))
          expect(late).toBeLessThanOrEqual(byNeed.get(due) ?? 0);
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
