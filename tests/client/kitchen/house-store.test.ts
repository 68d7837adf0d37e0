import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createHouseStore } from "../../../client/kitchen/house-store.ts";
import type { HouseStore } from "../../../client/kitchen/house-store.ts";
import { leftoverId } from "../../../core/house/leftover.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { instant } from "../../../core/units/quantity.ts";
import { five } from "../../core/cook/supper.ts";
import { handLine, Shelf } from "./house-line.ts";
import type { HandLine } from "./house-line.ts";

const pie = (id: string): HouseOrder => ({
  type: "StoreLeftover",
  id: leftoverId(id),
  dish: null,
  name: id,
  rest: { kind: "words", words: "half" },
  place: "fridge",
});

let now = 0;
let hand: HandLine;
let refusals: string[];
let open: HouseStore[];

function page(): HouseStore {
  const clock = { read: () => instant((now += 1000)) };
  const store = createHouseStore(clock, hand.line, (sentence) => refusals.push(sentence));
  open.push(store);
  return store;
}

const names = (store: HouseStore) => [...store.log.value.house.leftovers.keys()];
/** Lets what was sent come back: nothing on this line takes time. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

beforeEach(() => {
  Object.defineProperty(globalThis, "localStorage", { value: new Shelf(), configurable: true });
  now = five;
  hand = handLine(() => now);
  [refusals, open] = [[], []];
});
afterEach(() => {
  for (const store of open) store.close();
  Reflect.deleteProperty(globalThis, "localStorage");
});

describe("the house on a device", () => {
  it("[N113] joining it asks for the house, and hears what other devices do", async () => {
    hand.household.order({ id: "c1", at: five, order: pie("apple") });
    const store = page();
    hand.join();
    await settled();
    expect(names(store)).toEqual(["apple"]);
    hand.household.order({ id: "c2", at: five, order: pie("plum") });
    expect(names(store)).toEqual(["apple", "plum"]);
  });

  it("[N115] what is said while the server is away is there at once, waits, and goes out once, in its order", async () => {
    const store = page();
    hand.join();
    await settled();
    hand.cut();
    store.give([pie("apple")]);
    store.give([pie("plum")]);
    expect(names(store)).toEqual(["apple", "plum"]);
    expect([store.waiting.value, hand.sent()]).toEqual([2, 0]);
    hand.join();
    await settled();
    expect([store.waiting.value, hand.sent()]).toEqual([0, 2]);
    expect([...hand.household.house().leftovers.keys()]).toEqual(["apple", "plum"]);
    expect(store.log.value.house).toEqual(hand.household.house());
  });

  it("[N115] what the server refuses is said, and the page has the server's house", async () => {
    const store = page();
    hand.join();
    await settled();
    hand.cut();
    store.give([pie("apple")]);
    hand.household.order({ id: "c1", at: five, order: pie("apple") });
    hand.join();
    await settled();
    expect(refusals).toEqual(["That was put away already: apple."]);
    expect(store.log.value.house).toEqual(hand.household.house());
  });

  it("[N116] loaded again without the server it knows the house, with what waits; all of it goes out later", async () => {
    const before = page();
    hand.join();
    await settled();
    before.give([pie("apple")]);
    await settled();
    hand.cut();
    before.give([pie("plum")]);
    before.close();
    const after = page();
    expect(names(after)).toEqual(["apple", "plum"]);
    expect(after.waiting.value).toBe(1);
    hand.join();
    await settled();
    expect([...hand.household.house().leftovers.keys()]).toEqual(["apple", "plum"]);
    expect(after.waiting.value).toBe(0);
  });
});
