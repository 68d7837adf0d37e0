import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decideHouse, numberedInHouse } from "../../../core/house/decide.ts";
import { appendHouse, emptyHouseLog, worthTelling } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { leftoverId } from "../../../core/house/leftover.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { parseHouseEvent, parseHouseOrder } from "../../../core/house/parse.ts";
import { houseSentence } from "../../../core/house/refusal.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { ratio } from "../../../core/units/rational.ts";
import { at } from "../cook/supper.ts";
import { afterSupper, give, leftoverIn, refusal, servings, store, supper } from "./house-at.ts";

const dishes = fc.constantFrom("soup", "pilaf", "salad", "mystery", "nothing");
const ids = fc.constantFrom("a", "b", "c").map(leftoverId);
const orders: fc.Arbitrary<HouseOrder> = fc.oneof(
  fc
    .record({ dish: dishes, n: fc.integer({ min: 0, max: 9 }), id: ids })
    .map(({ dish, n, id }) => store(dish, servings(n, 2), "fridge", id)),
  fc.record({
    type: fc.constant("EatLeftover" as const),
    id: ids,
    servings: fc.constantFrom(null, ratio(1, 2), ratio(2)),
  }),
  fc.record({
    type: fc.constant("HeatLeftover" as const),
    id: ids,
    some: fc.option(fc.record({ servings: fc.constantFrom(ratio(1, 2), ratio(2)), as: ids })),
  }),
  fc.record({ type: fc.constant("ThrowAwayLeftover" as const), id: ids }),
  fc.record({ type: fc.constant("FinishDish" as const), dish: dishes.map(dishId) }),
  fc.record({
    type: fc.constant("BeginCooling" as const),
    dish: dishes.map(dishId),
    since: fc.constant(at(90)),
  }),
  fc.record({ type: fc.constant("EndCooling" as const), dish: dishes.map(dishId) }),
  fc.constantFrom<HouseOrder>(
    { type: "SilenceReminders" },
    { type: "UndoLast" },
    { type: "NoteMeal", made: supper },
    { type: "NoteMeal", made: { ...supper, session: "evening-2" } },
  ),
);

/** What comes of some orders; what is refused changes nothing. */
function live(given: readonly HouseOrder[]): HouseLog {
  return given.reduce<HouseLog>((log, order, index) => {
    const command = { id: `c${index}`, at: at(130 + index), order };
    const decision = decideHouse(command, log);
    if (!decision.ok) expect(houseSentence(decision.error)).toMatch(/^[A-Z].*[.]$/);
    return decision.ok ? appendHouse(log, numberedInHouse(command, log, decision.value)) : log;
  }, afterSupper());
}

describe("the household log", () => {
  it("[L60] replayed in any pieces it gives the house that was live", () => {
    fc.assert(
      fc.property(fc.array(orders, { maxLength: 25 }), fc.nat(25), (given, cut) => {
        const log = live(given);
        expect(appendHouse(emptyHouseLog, log.events)).toEqual(log);
        const some = appendHouse(emptyHouseLog, log.events.slice(0, cut));
        // A snapshot may overlap what is there.
        expect(appendHouse(some, log.events.slice(Math.max(0, cut - 3)))).toEqual(log);
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  it("[L61] written down and read back it is the same; every order is read as well", () => {
    fc.assert(
      fc.property(fc.array(orders, { maxLength: 25 }), (given) => {
        const { events } = live(given);
        const back = (JSON.parse(JSON.stringify(events)) as unknown[]).map(parseHouseEvent);
        expect(back.flatMap((one) => (one.ok ? [one.value] : []))).toEqual(events);
        for (const order of given) expect(parseHouseOrder(order)).toEqual({ ok: true, value: order });
      }),
      { seed: 32, numRuns: 40 },
    );
  });

  it("[L61] an order of another shape is refused with a sentence that names the field", () => {
    const bad = parseHouseOrder({ ...store("soup", servings(2)), place: "cellar" });
    expect(bad.ok ? "" : bad.error).toMatch(/^That order makes no sense at place/);
    for (const wrong of ["2", "2/0", "-1/2", "x"]) {
      const order = { type: "EatLeftover", id: "a", servings: wrong };
      expect(parseHouseOrder(order).ok, wrong).toBe(false);
    }
  });

  it("[L62] undo takes back the last thing that the cook did, then the one before, and no note of a meal", () => {
    const stored = afterSupper([130, store("soup", servings(2))], [131, store("pilaf", servings(1))]);
    const once = give(stored, 132, { type: "UndoLast" });
    expect([...once.house.leftovers.keys()]).toEqual(["soup"]);
    const twice = give(once, 133, { type: "UndoLast" });
    expect(twice.house).toEqual(afterSupper().house);
    expect(refusal(twice, 134, { type: "UndoLast" })).toEqual({ code: "NothingToUndo" });
  });

  it("[L62] after twelve hours a deed is no longer what undo means", () => {
    const stored = afterSupper([130, store("soup", servings(2))]);
    expect(refusal(stored, 130 + 12 * 60, { type: "UndoLast" })).toBeNull();
    expect(refusal(stored, 131 + 12 * 60, { type: "UndoLast" })).toEqual({ code: "NothingToUndo" });
  });

  it("[L63] a command with an id that the log holds already does nothing", () => {
    const stored = give(afterSupper(), 130, store("soup", servings(2)), "once");
    expect(give(stored, 131, store("soup", servings(1), "freezer", "other"), "once")).toEqual(stored);
  });

  it("[L64] what a device is told makes the same house, with one note of a meal", () => {
    fc.assert(
      fc.property(fc.array(orders, { maxLength: 25 }), (given) => {
        const log = live(given);
        const told = worthTelling(log.events);
        expect(told.filter(({ happening }) => happening.type === "MealNoted")).toHaveLength(1);
        expect(appendHouse(emptyHouseLog, told).house).toEqual(log.house);
      }),
      { seed: 33, numRuns: 60 },
    );
  });

  it("[L64] a device is not told to be silent of a meal because it was silent of the one before", () => {
    const silent = afterSupper([130, { type: "SilenceReminders" }]);
    const made = { ...supper, session: "evening-2" };
    const next = give(silent, 200, { type: "NoteMeal", made });
    expect(appendHouse(emptyHouseLog, worthTelling(next.events)).house).toEqual(next.house);
    expect(next.house.isSilenced).toBe(false);
  });

  it("[L64] a device that was told so goes on with what comes after", () => {
    const before = afterSupper([130, store("soup", servings(2))]);
    const device = appendHouse(emptyHouseLog, worthTelling(before.events));
    const after = give(before, 140, { type: "EatLeftover", id: leftoverId("soup"), servings: null });
    const joined = appendHouse(device, after.events.slice(before.events.length));
    expect(joined.house).toEqual(after.house);
    expect(leftoverIn(joined, "soup")).toBeNull();
  });
});
