import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decideHouse, numberedInHouse } from "../../../core/house/decide.ts";
import { appendHouse, emptyHouseLog, worthTelling } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { parseHouseEvent, parseHouseOrder } from "../../../core/house/parse.ts";
import { houseSentence, type HouseRefusal } from "../../../core/house/refusal.ts";
import { at } from "../cook/supper.ts";
import { afterSupper, give, refusal } from "./house-at.ts";

const want = (name: string): HouseOrder => ({ type: "WantThing", name });
const buy = (name: string): HouseOrder => ({ type: "BuyThing", name });
const drop = (name: string): HouseOrder => ({ type: "DropThing", name });
const unbuy = (name: string): HouseOrder => ({ type: "UnbuyThing", name });
const undo: HouseOrder = { type: "UndoLast" };

/** Orders a minute after each other. */
const house = (...orders: readonly HouseOrder[]): HouseLog =>
  orders.reduce((log, order, index) => give(log, 10 + index, order), emptyHouseLog);
const names = ({ house: { wanted } }: HouseLog) =>
  [...wanted.values()].map(({ name, boughtAt }) => (boughtAt === null ? name : `${name}, bought`));
const said = (log: HouseLog, order: HouseOrder) => houseSentence(refusal(log, 60, order) as HouseRefusal);

const orders: fc.Arbitrary<HouseOrder> = fc.oneof(
  fc.record({
    type: fc.constantFrom(
      "WantThing" as const,
      "DropThing" as const,
      "BuyThing" as const,
      "UnbuyThing" as const,
    ),
    name: fc.constantFrom("lemons", "a lemon", "kitchen paper", "the"),
  }),
  fc.constantFrom<HouseOrder>({ type: "ClearBought" }, { type: "UndoLast" }),
);

describe("what is wanted from the shop", () => {
  it("[B37] is kept in the cook's words, in the order of the wishes", () => {
    expect(names(house(want(" kitchen  paper"), want("lemons")))).toEqual(["kitchen paper", "lemons"]);
  });

  it("[B37] the same thing under another number or with an article is one line", () => {
    const log = house(want("lemons"));
    for (const name of ["lemons", "a lemon", "the Lemons", "some more lemons"])
      expect(said(log, want(name)), name).toBe("Lemons are on the list already.");
    expect(said(house(want("nutmeg")), want("nutmeg"))).toBe("Nutmeg is on the list already.");
    expect(said(house(want("salt and pepper")), want("salt and pepper"))).toMatch(/^Salt and pepper are/);
  });

  it("[B38] is bought, had back, and taken off", () => {
    const bought = house(want("lemons"), want("oil"), buy("the lemon"));
    expect(names(bought)).toEqual(["lemons, bought", "oil"]);
    expect(names(give(bought, 20, unbuy("lemons")))).toEqual(["lemons", "oil"]);
    expect(names(give(bought, 20, drop("oil")))).toEqual(["lemons, bought"]);
  });

  it("[B38] what cannot be done is refused with a sentence", () => {
    const log = house(want("lemons"), want("oil"), buy("oil"));
    expect(said(log, buy("nutmeg"))).toBe("Nutmeg is not on the list.");
    expect(said(log, drop("candles"))).toBe("Candles are not on the list.");
    expect(said(log, buy("oil"))).toBe("Oil is in the bag already.");
    expect(said(log, unbuy("lemon"))).toBe("Lemons are not in the bag.");
    for (const nothing of ["the", " ", "some more", "x".repeat(81)])
      expect(said(log, want(nothing)), nothing).toBe("Say what to put on the list, like lemons.");
  });

  it("[B39] what was bought stays until it is cleared, or wanted again", () => {
    const bought = house(want("lemons"), want("oil"), buy("lemons"));
    expect(names(give(bought, 20, { type: "ClearBought" }))).toEqual(["oil"]);
    expect(names(give(bought, 20, want("lemons")))).toEqual(["oil", "lemons"]);
    const none = house(want("oil"));
    expect(give(none, 20, { type: "ClearBought" })).toEqual(none);
  });

  it("[B39] what was bought more than twelve hours before goes with the next wish or purchase", () => {
    const bought = house(want("lemons"), buy("lemons"));
    const half = 11 + 12 * 60;
    expect(names(give(bought, half, want("oil")))).toEqual(["lemons, bought", "oil"]);
    expect(names(give(bought, half + 1, want("oil")))).toEqual(["oil"]);
    const both = give(give(bought, 20, want("oil")), half + 1, buy("oil"));
    expect(names(both)).toEqual(["oil, bought"]);
    expect([...both.house.wanted.values()][0]?.boughtAt).toBe(at(half + 1));
  });

  it("[B40] undo takes back the last of it, then the one before", () => {
    const bought = house(want("lemons"), buy("lemons"));
    const once = give(bought, 20, undo);
    expect(names(once)).toEqual(["lemons"]);
    expect(names(give(once, 21, undo))).toEqual([]);
    expect(names(give(house(want("oil"), drop("oil")), 20, undo))).toEqual(["oil"]);
    const cleared = give(bought, 20, { type: "ClearBought" });
    expect(names(give(cleared, 21, undo))).toEqual(["lemons, bought"]);
  });

  it("[B37] any wishes replayed, written down, and as a device is told them, give the same list", () => {
    fc.assert(
      fc.property(fc.array(orders, { maxLength: 25 }), (given) => {
        const log = given.reduce<HouseLog>((before, order, index) => {
          expect(parseHouseOrder(order)).toEqual({ ok: true, value: order });
          const command = { id: `w${index}`, at: at(130 + 90 * index), order };
          const decision = decideHouse(command, before);
          return decision.ok ? appendHouse(before, numberedInHouse(command, before, decision.value)) : before;
        }, afterSupper());
        const read = (JSON.parse(JSON.stringify(worthTelling(log.events))) as unknown[]).map(parseHouseEvent);
        const events = read.flatMap((one) => (one.ok ? [one.value] : []));
        expect(appendHouse(emptyHouseLog, events).house).toEqual(log.house);
      }),
      { seed: 34, numRuns: 80 },
    );
  });

  it("[B41] a log from before is read as it was, and wishes come on top of it", () => {
    const before = afterSupper();
    expect(before.house.wanted).toEqual(new Map());
    const after = give(before, 130, want("lemons"));
    expect({ ...after.house, wanted: new Map() }).toEqual(before.house);
    expect(after.events.slice(0, before.events.length)).toEqual(before.events);
  });
});
