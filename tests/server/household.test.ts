import { beforeEach, describe, expect, it } from "vitest";
import { leftoverId } from "../../core/house/leftover.ts";
import type { HouseOrder } from "../../core/house/orders.ts";
import type { HouseAppended } from "../../core/sync/protocol.ts";
import { minutes, plus, type Instant } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import { Household } from "../../server/kitchen/household.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { noteMeals } from "../../server/kitchen/note-meals.ts";
import { MemoryHouseStore } from "../../server/store/memory-house-store.ts";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { five, smallMeal } from "./small-meal.ts";

let store: MemoryHouseStore;
let evenings: MemoryMealStore;
let now: Instant;
let ids: number;
let heard: HouseAppended[];

const parts = () => ({ now: () => now, newId: () => `id-${(ids += 1)}` });

function open(): Household {
  const opened = Household.open({ store, ...parts() });
  if (!opened.ok) throw new Error(opened.error.code);
  opened.value.listen((appended) => heard.push(appended));
  return opened.value;
}

function kitchenOf(): Kitchen {
  const opened = Kitchen.open({ store: evenings, meal: () => ok(smallMeal), ...parts() });
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

const noting = (kitchen: Kitchen, household: Household) =>
  noteMeals({ kitchen, household, store: evenings, foods: null, report: () => undefined });

beforeEach(() => {
  store = new MemoryHouseStore();
  evenings = new MemoryMealStore();
  now = five;
  ids = 0;
  heard = [];
});

const pie: HouseOrder = {
  type: "StoreLeftover",
  id: leftoverId("pie"),
  dish: null,
  name: "pie",
  rest: { kind: "words", words: "half" },
  place: "fridge",
};
const message = (id: string, order: HouseOrder) => ({ id, at: now, order });

describe("orders about the house", () => {
  it("[N110] an order is decided, written and told; the same id again gets the same answer and does nothing", () => {
    const household = open();
    const answer = household.order(message("c1", pie));
    expect(answer).toEqual({ ok: true, seq: 1 });
    expect(household.order(message("c1", pie))).toEqual(answer);
    expect(heard.flatMap(({ events }) => events)).toEqual(household.snapshot().events);
    expect(store.load()).toEqual(ok(household.snapshot().events));
    expect(household.snapshot().events).toMatchObject([{ seq: 1, command: "c1", at: five }]);
  });

  it("[N111] a refused order changes nothing, and its refusal is given again", () => {
    const household = open();
    const refused = household.order(message("c1", { type: "UndoLast" }));
    expect(refused).toEqual({ ok: false, sentence: "There is nothing to undo." });
    household.order(message("c2", pie));
    expect(household.order(message("c1", { type: "UndoLast" }))).toEqual(refused);
    expect(household.house().leftovers.size).toBe(1);
  });

  it("[N111] on a full disk an order is refused with the sentence; the same order succeeds when there is room", () => {
    const household = open();
    store.failWith({ code: "DiskFull" });
    expect(household.order(message("c1", pie))).toMatchObject({
      ok: false,
      sentence: expect.stringMatching(/disk is full/) as string,
    });
    expect(heard).toEqual([]);
    store.failWith(null);
    expect(household.order(message("c1", pie))).toEqual({ ok: true, seq: 1 });
  });

  it("[N112] a house opened again on the same log is as it was", () => {
    const before = open();
    before.order(message("c1", pie));
    const after = open();
    expect(after.house()).toEqual(before.house());
    expect(after.order(message("c1", pie))).toEqual({ ok: true, seq: 1 });
  });
});

describe("notes of meals", () => {
  const begin = (kitchen: Kitchen): string => {
    const begun = kitchen.begin({ id: "begin-1", meal: "small-meal", servings: {}, serveAt: null });
    if (!begun.ok) throw new Error(begun.sentence);
    return begun.session;
  };
  const end = (kitchen: Kitchen, session: string) =>
    kitchen.order({ session, id: "end", at: now, order: { type: "EndMeal" } });

  it("[N114] a meal is noted when it begins and when it ends, and not for each step", () => {
    const [kitchen, household] = [kitchenOf(), open()];
    noting(kitchen, household);
    const session = begin(kitchen);
    expect(household.house().made).toMatchObject({ session, name: smallMeal.name, endedAt: null });
    now = plus(five, minutes(3));
    kitchen.tick();
    expect(heard).toHaveLength(1);
    now = plus(five, minutes(50));
    end(kitchen, session);
    expect(household.house().made).toMatchObject({ session, endedAt: now });
    expect(heard).toHaveLength(2);
  });

  it("[N114] a meal that ended while nothing was noted is noted at the next start, with its own end", () => {
    const [kitchen, household] = [kitchenOf(), open()];
    const stop = noting(kitchen, household);
    const session = begin(kitchen);
    stop();
    now = plus(five, minutes(50));
    end(kitchen, session);
    const endedAt = now;
    now = plus(five, minutes(600));
    const again = open();
    noting(kitchenOf(), again);
    expect(again.house().made).toMatchObject({ session, endedAt });
  });

  it("[N114] a server that starts in the middle of a meal notes it once", () => {
    const [kitchen, household] = [kitchenOf(), open()];
    noting(kitchen, household);
    begin(kitchen);
    noting(kitchenOf(), open());
    expect(heard).toHaveLength(1);
  });
});
